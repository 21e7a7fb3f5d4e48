"""Makes the wheel: the generated modules with the library beside them, as `cargo xtask package` lays them out."""

import os

from setuptools import Distribution, setup
from setuptools.command.bdist_wheel import bdist_wheel


class WithLibrary(Distribution):
    """What is installed belongs to one kind of machine."""

    def has_ext_modules(self):
        return True


class WheelOfAnyPython(bdist_wheel):
    """The modules load the library themselves: any Python 3 will do."""

    def get_tag(self):
        return "py3", "none", super().get_tag()[2]


setup(
    name="layshaft",
    version=os.environ["LAYSHAFT_VERSION"],
    description="What Layshaft knows and works out, for scripts.",
    license="MIT OR Apache-2.0",
    python_requires=">=3.11",
    packages=["layshaft"],
    package_data={"layshaft": ["*.so", "*.dylib", "*.dll"]},
    cmdclass={"bdist_wheel": WheelOfAnyPython},
    distclass=WithLibrary,
)
