"""The duct system of a workplace as built: what flows, what the fan does, what a filter or a gate changes."""
