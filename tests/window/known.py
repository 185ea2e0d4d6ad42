"""What fixtures work out in each test alike, worked out once: the tests themselves do their own."""

from __future__ import annotations

import pickle
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

import pytest

from swatchwright.desktop import bench_work, sample_desk
from swatchwright.desktop.pages import brief_page

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

_TOLD = ("progress", "stopped")
"""What work is given to tell how far it is, which changes nothing of what it finds."""

_FOUND: dict[bytes, Any] = {}


@contextmanager
def known_findings() -> Iterator[None]:
    """Have the colours of a photo, mixes, advice on a sample and the demonstration at hand."""
    with pytest.MonkeyPatch.context() as patch:
        for module, name in (
            (bench_work, "colours_of"),
            (bench_work, "recipes_for"),
            (brief_page, "demo_findings"),
            (sample_desk, "advice_on"),
            (sample_desk, "would_teach"),
            (sample_desk, "stripes_beside"),
        ):
            patch.setattr(module, name, _once(getattr(module, name)))
        yield


def _once(work: Callable[..., Any]) -> Callable[..., Any]:
    def found(*given: Any, **named: Any) -> Any:
        asked = {key: value for key, value in named.items() if key not in _TOLD}
        key = pickle.dumps((work.__name__, given, asked))
        if key not in _FOUND:
            _FOUND[key] = work(*given, **named)
        return _FOUND[key]

    return found
