"""Opens pictures one after another and reports on each; run as a program of its own.

It is given a file with a path a line. For each it writes a line of JSON before ("path") and one
after ("end", "seconds" of its processor), so that whoever reads knows what a crash or a hang was
about. Its memory is bounded, so that a picture that asks for too much is found out.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from time import process_time

from swatchwright.errors import MendableError
from swatchwright.photo.readers import read_photo

MOST_MEMORY = 2 * 1024**3


def main() -> None:
    """Open all."""
    if sys.platform != "win32":
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))
    for path in Path(sys.argv[1]).read_text(encoding="utf-8").splitlines():
        say(path=path)
        start = process_time()
        end = opened(Path(path))
        say(end=end, seconds=process_time() - start)


def opened(path: Path) -> str:
    """Open one and tell how that ended: "read", "refused", or what was thrown."""
    try:
        photo = read_photo(path)
        light = photo.linear(step=max(1, photo.width // 64))
    except MendableError as error:
        return "refused" if str(error) and error.mend else "refused without words"
    except BaseException as error:  # noqa: BLE001 the point is to see whatever comes
        return f"{type(error).__name__}: {error}"
    return "read" if abs(float(light.mean())) < 1e6 else "read as nonsense"


def say(**words: object) -> None:
    """Write a line at once."""
    sys.stdout.write(json.dumps(words) + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
