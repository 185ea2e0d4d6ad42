"""What is on the bench: the photo and its marks, the colours, the wanted one and its mixes.

Widgets change the session and redraw from its signals; none of them keeps state of its own. What a
person does to the marks or to the wanted colour can be undone and redone.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from swatchwright.acts.client_wish import Question
from swatchwright.acts.colours import PhotoColours, open_photo
from swatchwright.acts.job_bench import pick_among
from swatchwright.acts.recipes import (
    DEFAULT_VOLUME,
    Recipes,
    colour_by_eye,
    could_be_closer,
    read_colour,
    with_volume,
)
from swatchwright.acts.shelf_used import UsedShelf
from swatchwright.acts.wish import by_name, check_together, wishes_on
from swatchwright.desktop import words
from swatchwright.desktop.bench_work import (
    MixesAsked,
    opening_shelf,
    reading_colours,
    searching,
)
from swatchwright.desktop.history import History
from swatchwright.desktop.marks import Marks
from swatchwright.desktop.workers import Job, Workshop
from swatchwright.errors import MendableError
from swatchwright.mixing.wishes import Wishes
from swatchwright.photo.image import Photo
from swatchwright.shelf.csv_file import demo_shelf, save_demo_shelf
from swatchwright.shelf.jobs import KeptPhoto
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour, Lab, Rect

__all__ = ["Session"]


class Session(QObject):
    """The state of the bench.

    Signals
    -------
    photo_changed()
        Another photo was opened.
    marks_changed()
        A mark was set, moved or taken away.
    colours_changed()
        The colours were read anew, or dropped.
    pick_changed()
        Another colour is wanted, or none.
    recipes_changed()
        The mixes were found anew, dropped, or their amounts changed.
    proof_changed()
        It was proven by how much another mix could be closer still, or that is open again.
    shelf_changed()
        Another shelf is used, or others of its paints.
    shelf_opened(str)
        A shelf was read from a file of this name, and is used.
    fan_picked(Neighbour)
        A mix of a fan was picked by eye: brushed and dried, it looks like the cloth.
    wishes_changed()
        Something else is asked of all mixes, or it was found that it cannot be kept.
    """

    photo_changed = Signal()
    marks_changed = Signal()
    colours_changed = Signal()
    pick_changed = Signal()
    recipes_changed = Signal()
    proof_changed = Signal()
    shelf_changed = Signal()
    shelf_opened = Signal(str)
    fan_picked = Signal(object)
    wishes_changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.workshop = Workshop(self)
        self.photo: Photo | None = None
        self.marks = Marks()
        self.found: PhotoColours | None = None
        self.pick: int | None = None
        self.typed: KnownColour | None = None
        self.recipes: Recipes | None = None
        self.could_be_closer: float | None = None
        self.shelf: Shelf = demo_shelf()
        # The file that was opened last as a shelf.
        self.shelf_file = UsedShelf()
        self.wishes = Wishes()
        self.wish_trouble: MendableError | None = None
        self.volume = DEFAULT_VOLUME
        self.most_paints = 3
        # What the client was last said to want of the mixes for a colour: it is asked on one page
        # and asked again in another window.
        self.asked: tuple[Lab, Question] | None = None
        self.history = History(self)
        self.path: Path | None = None
        self.kept: KeptPhoto | None = None
        self.read_with: Marks | None = None
        self._meant: KnownColour | None = None
        self._since: tuple[int | None, KnownColour | None] | None = None

    # --- photo and marks -------------------------------------------------------------------------

    def open(self, path: Path, marks: Marks | None = None) -> None:
        """Open a photo, with marks already on it if they are known."""

        def done(photo: Photo) -> None:
            self.lay(photo, marks or Marks(reflectance=self.marks.reflectance), path=path)

        self.workshop.start("photo", words.READING, lambda _: open_photo(path), done)

    def lay(
        self,
        photo: Photo | None,
        marks: Marks,
        *,
        path: Path | None = None,
        kept: KeptPhoto | None = None,
        wanted: KnownColour | None = None,
    ) -> None:
        """Lay a photo on the bench in place of another, or clear the bench.

        Parameters
        ----------
        photo, marks
            The photo, None for none, and what is marked in it.
        path, kept
            Its file, and how a job keeps it, where there is one.
        wanted
            The colour that is wanted; the first of the cloth if None.
        """
        for kind in ("photo", "picture", "colours", "mixes", "proof"):
            self.workshop.stop(kind)
        self.photo, self.marks, self.path, self.kept = photo, marks, path, kept
        self.history.forget()
        self.found, self.pick, self.typed, self.recipes = None, None, None, None
        self._meant = wanted
        self.photo_changed.emit()
        self.marks_changed.emit()
        self.colours_changed.emit()
        self.recipes_changed.emit()
        if photo is None:
            self._want(None, wanted)
        self._read_colours()

    def set_marks(self, marks: Marks, told: str = words.DID_MARK) -> None:
        """Set the marks, so that it can be undone under these words."""
        if marks == self.marks:
            return
        before, wanted = self.marks, self.coming
        same = (marks.cloth, marks.metre) == (before.cloth, before.metre)
        self._apply(marks, self._meant if same else None)
        self.history.add(told, lambda: self.take(before, wanted), lambda: self._apply(marks))

    def take(self, marks: Marks, wanted: KnownColour | None, volume: float | None = None) -> None:
        """Lay marks and want a colour as they were before, or as they are kept with a job.

        No colour wants what is read first, as with any other mark; no volume leaves the amount.
        """
        if volume is not None and volume != self.volume:
            self.set_volume(volume)
        if marks != self.marks or self.workshop.doing("colours"):
            self._apply(marks, wanted)
        if not self.workshop.doing("colours"):
            self._want(*((None, None) if wanted is None else self._place_of(wanted)))

    def set_grey(self, rect: Rect | None) -> None:
        """Set where the grey card is."""
        self.set_marks(replace(self.marks, grey=rect))

    def set_cloth(self, rect: Rect | None) -> None:
        """Set where the cloth is."""
        self.set_marks(replace(self.marks, cloth=rect))

    def set_reflectance(self, reflectance: float) -> None:
        """Set what the card reflects, 0-1."""
        self.set_marks(replace(self.marks, reflectance=reflectance))

    def set_metre(self, *, metre: bool) -> None:
        """Want the colours as seen from a metre away, or as those of the yarn."""
        self.set_marks(replace(self.marks, metre=metre), words.DID_WANT)

    def _apply(self, marks: Marks, meant: KnownColour | None = None) -> None:
        self.marks, self._meant = marks, meant
        self.marks_changed.emit()
        self._read_colours()

    def read_meanwhile(self, grey: Rect | None) -> None:
        """Read the colours as if the grey card were here, while its mark is being dragged."""
        self._read_colours(replace(self.marks, grey=grey))

    # --- colours ---------------------------------------------------------------------------------

    def _read_colours(self, meanwhile: Marks | None = None) -> None:
        photo, marks = self.photo, meanwhile or self.marks
        if photo is None:
            return
        read, self._since = self.read_with, None
        same_cloth = self.found is not None and read is not None and read.cloth == marks.cloth
        # Before the cloth is marked the table would be the largest colour: none is wanted yet.
        first = None if marks.cloth is None else 0
        pick = self.pick if same_cloth and self.pick is not None else first

        def done(found: PhotoColours) -> None:
            self.found, self.read_with = found, marks
            meant, self._meant = self._meant, None
            now = (pick, None) if meant is None else self._place_of(meant)
            now, self._since = self._since or now, None
            most = len(found.colours) - 1
            self.pick, typed = None if now[0] is None else min(now[0], most), now[1]
            self.colours_changed.emit()
            self._want(self.pick, typed)

        self.workshop.start("colours", words.FINDING_COLOURS, reading_colours(photo, marks), done)

    def choose(self, pick: int | None) -> None:
        """Want one of the colours, by its place among them."""
        self._want_instead(pick, None)

    def type_colour(self, text: str) -> None:
        """Want a colour by its numbers: L*, a*, b* or #rrggbb."""
        try:
            typed = read_colour(text)
        except MendableError as error:
            self.workshop.failed.emit(error)
            return
        self._want_instead(None, typed)

    def want(self, lab: Lab, origin: str) -> None:
        """Want a colour that was chosen by eye."""
        self._want_instead(None, colour_by_eye(lab, origin))

    def want_known(self, wanted: KnownColour) -> None:
        """Want a colour that is kept, as surely as it is known."""
        self._want_instead(*self._place_of(wanted))

    def _place_of(self, wanted: KnownColour) -> tuple[int | None, KnownColour | None]:
        """Give the place of a kept colour among those found, and the colour where it is another.

        Read anew from a smaller copy, a colour comes out a little different; the kept one counts.
        """
        found = self.found
        pick = None if found is None else pick_among(found, wanted)
        same = found is not None and pick is not None and found.colours[pick].colour == wanted
        return pick, None if same else wanted

    def _want_instead(self, pick: int | None, typed: KnownColour | None) -> None:
        """Want another colour, so that it can be undone."""
        before = (self.pick, self.typed)
        if before == (pick, typed):
            return
        self._want(pick, typed)
        if before != (None, None):
            self.history.add(
                words.DID_WANT, lambda: self._want(*before), lambda: self._want(pick, typed)
            )

    def _want(self, pick: int | None, typed: KnownColour | None) -> None:
        if self.workshop.doing("colours"):
            # She chose while they were being read: that is what counts once they are.
            self._since = (pick, typed)
        if pick is not None and self.found is not None:
            # The photo may have been read anew since, with fewer colours in it.
            pick = min(pick, len(self.found.colours) - 1)
        self.pick, self.typed = pick, typed
        self.pick_changed.emit()
        self._find_mixes()

    @property
    def wanted(self) -> KnownColour | None:
        """The wanted colour; None if none is picked or typed."""
        if self.typed is not None:
            return self.typed
        if self.found is None or self.pick is None:
            return None
        return self.found.colours[self.pick].colour

    @property
    def coming(self) -> KnownColour | None:
        """The colour that is wanted once the photo is read; None where only that will tell."""
        if not self.workshop.doing("colours"):
            return self.wanted
        return self._meant if self._since is None else self._since[1]

    # --- mixes -----------------------------------------------------------------------------------

    def _find_mixes(self) -> None:
        self.workshop.stop("proof")
        self.could_be_closer = None
        self.proof_changed.emit()
        if self.wanted is None:
            self.workshop.stop("mixes")
            self.recipes = None
            self.recipes_changed.emit()
            return
        self.workshop.start(
            "mixes", words.FINDING_MIXES, self._search(), self._mixes_found, self._no_mixes
        )

    def _search(self, *, proven: bool = False) -> Callable[[Job], Recipes]:
        """Give the work of finding the mixes for what is wanted now."""
        if self.wanted is None:
            raise ValueError("nothing is wanted")
        asked = MixesAsked(self.wanted, self.shelf, self.wishes, self.most_paints, self.volume)
        return searching(asked, proven=proven)

    def _no_mixes(self, what: object) -> None:
        """Tell why there are no mixes; those of before are not what is asked for now."""
        if not isinstance(what, MendableError):
            self.workshop.failed.emit(what)
            return
        named = by_name(what, self.shelf)
        self.recipes = None
        self.recipes_changed.emit()
        self.workshop.failed.emit(named)
        self._wishes_fail(named)

    def _mixes_found(self, recipes: Recipes) -> None:
        self._wishes_fail(None)
        self.recipes = with_volume(recipes, self.volume)
        self.recipes_changed.emit()
        self.could_be_closer = could_be_closer(recipes, recipes)
        self.proof_changed.emit()
        if self.could_be_closer is None:
            # What is found is shown at once; the proof that little is better may take seconds.
            self.workshop.start("proof", words.PROVING, self._search(proven=True), self._proven)

    def _proven(self, recipes: Recipes) -> None:
        self.could_be_closer = could_be_closer(self.recipes or recipes, recipes)
        self.proof_changed.emit()

    def set_volume(self, volume: float) -> None:
        """Set how many ml to mix."""
        self.volume = volume
        if self.recipes is not None:
            self.recipes = with_volume(self.recipes, volume)
            self.recipes_changed.emit()

    def set_most_paints(self, count: int) -> None:
        """Set how many paints a mix may have: 2 or 3."""
        if count != self.most_paints:
            self.most_paints = count
            self._find_mixes()

    # --- shelf -----------------------------------------------------------------------------------

    def open_shelf(self, path: Path) -> None:
        """Use the paints of a shelf file."""

        def done(answer: tuple[Shelf, UsedShelf]) -> None:
            shelf, self.shelf_file = answer
            self.use_shelf(shelf)
            self.shelf_opened.emit(path.name)

        self.workshop.start("shelf", words.READING, opening_shelf(path), done)

    def use_shelf(self, shelf: Shelf) -> None:
        """Use these paints; wishes for others wait until these are back."""
        self.shelf = shelf
        self.shelf_changed.emit()
        self.wishes_changed.emit()
        self._ask_again()

    @property
    def unused(self) -> frozenset[str]:
        """Ids of the paints of the shelf that are not to be used."""
        return wishes_on(self.shelf, self.wishes).without

    def use_paint(self, id_: str, *, use: bool) -> None:
        """Use a paint of the shelf in the mixes, or leave it out."""
        without = self.wishes.without - {id_} if use else self.wishes.without | {id_}
        self.wish(replace(self.wishes, without=without))

    def wish(self, wishes: Wishes) -> None:
        """Ask something else of all mixes, so that it can be undone."""
        before = self.wishes
        if wishes != before:
            self.take_wishes(wishes)
            self.history.add(
                words.DID_WISH,
                lambda: self.take_wishes(before),
                lambda: self.take_wishes(wishes),
            )

    def take_wishes(self, wishes: Wishes) -> None:
        """Ask this of all mixes from now on."""
        if wishes == self.wishes:
            return
        others_used = wishes.without != self.wishes.without
        self.wishes, self.wish_trouble = wishes, None
        if others_used:
            self.shelf_changed.emit()
        self.wishes_changed.emit()
        self._ask_again()

    def _ask_again(self) -> None:
        """Find the mixes anew, or, where nothing is wanted yet, see that the wishes go together."""
        self._find_mixes()
        if self.wanted is None and self.wishes != Wishes():
            shelf, wishes, most = self.shelf, self.wishes, self.most_paints
            self.workshop.start(
                "wishes",
                words.FINDING_MIXES,
                lambda _: check_together(shelf, wishes, most_paints=most),
                lambda _: self._wishes_fail(None),
                self._no_mixes,
            )

    def _wishes_fail(self, why: MendableError | None) -> None:
        if why != self.wish_trouble:
            self.wish_trouble = why
            self.wishes_changed.emit()

    def save_example(self, path: Path) -> None:
        """Write the demonstration shelf to a file, to be filled in with one's own paints."""
        self.workshop.start("shelf", words.READING, lambda _: save_demo_shelf(path), _nothing)

    def close(self) -> None:
        """Stop all work."""
        self.workshop.close()


def _nothing(_: object) -> None:
    """Need nothing done with a result."""
