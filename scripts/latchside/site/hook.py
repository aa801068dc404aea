"""The file that MkDocs loads as a hook; the adapter holds what it does."""

from latchside.site.adapter import on_config, on_env, on_files, on_nav, on_post_build, on_startup

__all__ = ["on_config", "on_env", "on_files", "on_nav", "on_post_build", "on_startup"]
