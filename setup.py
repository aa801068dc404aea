"""Builds the wheel: the package, and within it the project that it works on where there is no checkout."""

import shutil
import sys
from pathlib import Path

from setuptools import setup
from setuptools.command.build_py import build_py

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE / "scripts"))

from latchside.root import PARTS  # noqa: E402 - the module needs nothing but the path above


class WithProject(build_py):
    """Puts the records, schemas and pages of the checkout into the wheel as `latchside/base`."""

    def run(self) -> None:
        """Copy the package, without what an earlier build left there, and then the project."""
        package = Path(self.build_lib) / "latchside"
        if not self.editable_mode:
            shutil.rmtree(package, ignore_errors=True)
        super().run()
        for name in () if self.editable_mode else PARTS:
            source, target = HERE / name, package / "base" / name
            if source.is_dir():
                shutil.copytree(source, target)
            else:
                shutil.copy(source, target)


setup(cmdclass={"build_py": WithProject})
