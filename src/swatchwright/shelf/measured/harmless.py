"""A walk through an XML file before it is read, to see that it does no harm.

An XML file may be made to hurt: entities that unfold to gigabytes or fetch other files, elements
nested without end. defusedxml refuses all declarations of that kind, and the elements are counted.
"""

from __future__ import annotations

from io import BytesIO

from swatchwright.errors import MendableError
from swatchwright.language import mark, say

__all__ = ["EXPORT_AGAIN", "lacking", "walk_through"]

EXPORT_AGAIN = mark("Export the measurements again as CxF3, or as CSV or CGATS text.")

_ROOT = "{http://colorexchangeformat.com/CxF3-core}CxF"
_DEEPEST = 40
_MOST_ELEMENTS = 500_000
_LONGEST_TEXT = 100_000


def lacking(error: ImportError) -> MendableError:
    """Say that the libraries for CxF are not installed, and how to get them."""
    return MendableError(
        say("CxF files need a library that is not installed here ({library}).", library=error.name),
        say(
            "Type “pip install colour-cxf defusedxml” (Python 3.11 to 3.13), or use CSV or CGATS "
            "text."
        ),
    )


def walk_through(data: bytes, name: str) -> None:
    """Refuse what is not well-formed, is not CxF3, declares anything, or is too deep or too large.

    Raises
    ------
    MendableError
        As said, or if defusedxml is not installed.
    """
    try:
        from defusedxml.common import DefusedXmlException
        from defusedxml.ElementTree import ParseError, iterparse
    except ImportError as error:
        raise lacking(error) from error
    depth = count = 0
    try:
        for event, element in iterparse(BytesIO(data), ("start", "end"), forbid_dtd=True):
            if event == "start":
                depth, count = depth + 1, count + 1
                if count == 1 and element.tag != _ROOT:
                    raise _refused(mark("{name} is XML and not CxF3."), name)
            long = event == "end" and len(element.text or "") > _LONGEST_TEXT
            if long or depth > _DEEPEST or count > _MOST_ELEMENTS:
                raise _refused(mark("{name} is far larger or deeper than a CxF file is."), name)
            if event == "end":
                depth -= 1
                element.clear()
    except DefusedXmlException as error:
        told = mark(
            "{name} declares entities or a document type, which no CxF file needs and which may "
            "do harm; it was not read."
        )
        raise _refused(told, name) from error
    except (ParseError, ValueError, LookupError) as error:
        raise _refused(mark("{name} is damaged: it is not well-formed XML."), name) from error


def _refused(what: str, name: str) -> MendableError:
    return MendableError(say(what, name=name), say(EXPORT_AGAIN))
