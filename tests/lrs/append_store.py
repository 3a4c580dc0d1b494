"""Ralph (PyPI: ralph-malph, MIT) over a file: its file backend writes the first statement only, unless told to append."""

from ralph.backends.data.base import BaseOperationType
from ralph.backends.lrs.fs import FSLRSBackend

FSLRSBackend.default_operation_type = BaseOperationType.APPEND

from ralph.api import app  # noqa: E402, F401
