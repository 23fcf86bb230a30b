"""What every report ends with, whatever it is about."""

from __future__ import annotations

from typing import Final

MASTER_COPY: Final = "Keep a master copy on the big computer: the small one forgets when its power goes."
