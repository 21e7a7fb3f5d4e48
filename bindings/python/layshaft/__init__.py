"""Layshaft: the bench of somebody who restores a small motorcycle at home, with a typed method for each query and command.

`Bench` opens the file of a device, or one in memory. Everything that its methods take and give stands beside it.
"""

from .layshaft_core import *
from .layshaft_door import *
from .layshaft_uniffi import *

# A message prints as its sentence.
Message.__str__ = say
