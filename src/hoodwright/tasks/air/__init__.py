"""The computed air of a workplace: its scene, solved; layers to look at; and the live air of the page."""
