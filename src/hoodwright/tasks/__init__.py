"""One file per user job: the only place where a document meets the physics."""
