"""The window: the bench, and along its left edge a rail of the pages that can be laid on it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSize, QStandardPaths, Qt, QTimer
from PySide6.QtGui import (
    QAction,
    QCloseEvent,
    QDragEnterEvent,
    QDropEvent,
    QKeySequence,
    QShortcut,
)
from PySide6.QtWidgets import (
    QApplication,
    QHBoxLayout,
    QMainWindow,
    QMenu,
    QPushButton,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.habits import habits, keep_dark, keep_letters
from swatchwright.acts.samples import SamplePhoto, sample_photos
from swatchwright.desktop import words
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.dressing import Dressing
from swatchwright.desktop.files import ask_open, note_file
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.letters import letters, set_letters
from swatchwright.desktop.look import DARK, LIGHT
from swatchwright.desktop.marks import Marks
from swatchwright.desktop.mix_side import MixSide
from swatchwright.desktop.money import recall_money
from swatchwright.desktop.pages import PAGES, AnyPage, import_pages
from swatchwright.desktop.pages.colour_page import ColourPage
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.photo_side import PhotoSide
from swatchwright.desktop.reach_window import ReachWindow
from swatchwright.desktop.sample_desk import SampleDesk
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.bench_area import BenchArea, PageStack, RailArea
from swatchwright.desktop.widgets.bench_button import BenchButton
from swatchwright.desktop.widgets.busy_line import BusyLine
from swatchwright.desktop.widgets.elided_label import ElidedLabel
from swatchwright.desktop.widgets.guide_button import GuideButton
from swatchwright.desktop.widgets.job_offer import PaintsOffer, PhotoOffer
from swatchwright.desktop.widgets.language_choice import LanguageButton, LanguageOffer
from swatchwright.desktop.widgets.message_strip import MessageStrip
from swatchwright.desktop.widgets.offer import Offer
from swatchwright.desktop.widgets.rail import Rail
from swatchwright.desktop.widgets.shelf_menu import ShelfMenu, ShelfTold
from swatchwright.desktop.widgets.top_bar import TopBar
from swatchwright.desktop.widgets.undo_buttons import UndoButtons
from swatchwright.desktop.wish_desk import WishDesk
from swatchwright.desktop.words import keeping
from swatchwright.shelf.job_file import SUFFIX

__all__ = ["AGAIN", "Window"]

AGAIN = 75
"""The exit code that asks for the window to be opened anew; os.EX_TEMPFAIL, which we do not use."""

_FIRST = "colour"
"""The page that is in view at the first start, and until it is known where she was."""

_EDGES, _GAP = (10, 14, 18, 12), 12
"""Pixels about the bench, left, above, right and below, and between its parts."""

_TITLE = 36
"""Pixels that a title bar takes at the most, on the systems we know."""

_REST = 400
"""ms after which the window, up and painted, fetches what its other pages need."""


class Window(QMainWindow):
    """The whole program on one bench."""

    def __init__(self) -> None:
        super().__init__()
        self.setWindowTitle(words.TITLE)
        self.setAcceptDrops(True)
        set_letters(habits().letters)
        recall_money()
        where = QStandardPaths.StandardLocation.PicturesLocation
        self._last_folder = QStandardPaths.writableLocation(where)
        self.reach_window: ReachWindow | None = None
        self.session = Session(self)
        self.desk = Desk(self.session.history, self)
        self.keeping = Keeping(self.session, self.desk)
        self.wishes = WishDesk.of(self.session, self.desk)
        self.samples = SampleDesk.of(self.session, self.desk)
        self.faults, self.trouble = MessageStrip(), MessageStrip()
        self.offer = PaintsOffer(self.keeping)
        self.photo_offer = PhotoOffer(self.keeping)
        self.job_told = ElidedLabel()
        self.back_offer = Offer(keeping.BACK_TAKE, keeping.BACK_LEAVE)
        self.language_offer = LanguageOffer()
        self.language = LanguageButton(self.language_offer)
        self.bench = BenchButton()
        self.dark = self.bench.dark
        self._turning = UndoButtons(self.desk)
        self.undo, self.redo = self._turning.undo, self._turning.redo
        self.shelf_told = ShelfTold(self.session)
        self.busy = BusyLine(self.session)
        self.rail = Rail([(kind.key, kind.word, kind.tip) for kind in PAGES])
        self._stack = PageStack()
        self._area, self._rail_area = BenchArea(self._stack), RailArea(self.rail)
        self._made: dict[str, AnyPage] = {}
        self._job_shown: str | None = None
        self._dressing = Dressing(self)
        self.colour_page = ColourPage(self.session, self.keeping)
        self._made[_FIRST] = self.colour_page
        self._stack.addWidget(self.colour_page)
        self._top = TopBar()
        self._strips = (
            self.faults,
            self.trouble,
            self.offer,
            self.photo_offer,
            self.back_offer,
            self.language_offer,
        )
        self._lay_out_top()
        self.setCentralWidget(self._bench())
        self._listen()
        self.dark.setChecked(habits().dark)
        self.set_dark(dark=self.dark.isChecked())
        self.dark.toggled.connect(lambda on: keep_dark(dark=on))
        self.show_page(_FIRST)
        room = self.screen().availableSize()
        self.resize(min(1360, room.width() - 20), min(820, room.height() - _TITLE))
        QTimer.singleShot(0, self, self.keeping.begin)
        QTimer.singleShot(_REST, self, self._import_pages)

    def _import_pages(self) -> None:
        """Import the other pages while nobody waits."""
        self.session.workshop.start(
            "pages", "", lambda job: import_pages(job.stopped), lambda _: None
        )

    def _listen(self) -> None:
        self.session.workshop.failed.connect(self.trouble.say)
        self.desk.failed.connect(self.trouble.say)
        self._turning.turned.connect(self.busy.note)
        self.busy.noting.connect(self._make_room)
        self.desk.page_wanted.connect(self.show_page)
        self.keeping.page_left.connect(self._show_left)
        self.desk.job_changed.connect(self._show_job)
        self.session.colours_changed.connect(self.trouble.hide)
        self.session.pick_changed.connect(self.trouble.hide)
        self.session.wishes_changed.connect(self._wishes_changed)
        self.rail.chosen.connect(self.show_page)
        self.mix_side.keep_bar.piece_wanted.connect(self._show_piece)
        self.back_offer.take.clicked.connect(lambda: self.show_page(_FIRST))
        self.language_offer.take.clicked.connect(self._start_again)
        escape = QShortcut(QKeySequence(Qt.Key.Key_Escape), self)
        escape.activated.connect(self.trouble.hide)

    def _bench(self) -> QWidget:
        bench = QWidget()
        bench.setAutoFillBackground(True)
        rows = QVBoxLayout(bench)
        rows.setContentsMargins(*_EDGES)
        rows.setSpacing(_GAP)
        rows.addWidget(self._top)
        below = QHBoxLayout()
        below.setSpacing(_GAP)
        below.addWidget(self._rail_area)
        # What is said stands over the page alone: the rail needs all the height of a small screen.
        column = QVBoxLayout()
        column.setSpacing(_GAP)
        for strip in self._strips:
            column.addWidget(strip)
        column.addWidget(self._area, 1)
        below.addLayout(column, 1)
        rows.addLayout(below, 1)
        return bench

    @property
    def photo_side(self) -> PhotoSide:
        """The photo, its marks and colours."""
        return self.colour_page.photo_side

    @property
    def mix_side(self) -> MixSide:
        """The mixes for the wanted colour."""
        return self.colour_page.mix_side

    def page(self, key: str) -> AnyPage:
        """Give a page, made when it is first asked for."""
        if key not in self._made:
            kind = next(kind for kind in PAGES if kind.key == key)
            made = kind.make(self.session, self.desk)
            made.coming.connect(self._dressing.dress)
            self._made[key] = made
            self._stack.addWidget(made)
        return self._made[key]

    def show_page(self, key: str) -> None:
        """Bring a page into view."""
        page = self.page(key)
        for part in page.dressed_parts():
            self._dressing.dress(part)
        self._stack.setCurrentWidget(page)
        self.rail.show_page(key)
        if key != "piece":
            self.back_offer.hide()
        self.keeping.memory.set_page(key)
        page.arrive()

    def _show_piece(self) -> None:
        """Bring the page of the piece into view, with the way back to the mixes."""
        self.show_page("piece")
        self.back_offer.told.setText(keeping.BACK_TOLD)
        self.back_offer.show()

    def _show_left(self, key: str) -> None:
        """Bring the page into view where she was when she left, unless she has gone to another."""
        kind = next((kind for kind in PAGES if kind.key == key), None)
        if kind is None or key == _FIRST:
            return

        def done(_: object) -> None:
            if self.rail.shown == _FIRST:
                self.show_page(key)

        self.session.workshop.start("page", "", lambda _: kind.module(), done)

    def _lay_out_top(self) -> None:
        row = self._top.left
        self.open_photo = _button(words.OPEN_PHOTO, QKeySequence.StandardKey.Open, self._ask_photo)
        self.open_photo.setObjectName("main")
        self.open_photo.setToolTip(f"<p>{words.OPEN_PHOTO_TIP}</p>")
        row.addWidget(self.open_photo)
        row.addWidget(_menu_button(words.SAMPLES, self._samples_menu()))
        row.addWidget(self.undo)
        row.addWidget(self.redo)
        row.addSpacing(10)
        self.job_told.setObjectName("strong")
        row.addWidget(self.job_told, 3)
        row.addWidget(self.busy, 2)
        row = self._top.right
        row.addWidget(self.shelf_told)
        shelf = ShelfMenu(self.keeping, self.show_shelf, self.show_reach, self._top)
        shelf.opening.connect(self.trouble.hide)
        row.addWidget(_menu_button(words.SHELF, shelf))
        self.dark.toggled.connect(lambda on: self.set_dark(dark=on))
        self.bench.letters_wanted.connect(self.set_letters)
        row.addWidget(self.bench)
        row.addWidget(self.language)
        self.guide = GuideButton(lambda: self.rail.shown)
        row.addWidget(self.guide)
        row.addStretch(0)

    def _samples_menu(self) -> QMenu:
        menu = QMenu(self._top)
        for sample in sample_photos():
            action = QAction(words.sample_told(sample), menu)
            action.triggered.connect(lambda _=False, s=sample: self.open_sample(s))
            menu.addAction(action)
        return menu

    def at_rest(self, *, besides: str = "proof") -> bool:
        """Tell whether all is done, kept and shown, besides work of one kind in the background."""
        idle = self.session.workshop.idle(besides=besides) and self.desk.idle()
        return idle and not self.mix_side.laying()

    def needs(self) -> QSize:
        """Give the size, in pixels, at which all is in view without scrolling."""
        page, rail, top = self._area.needs(), self.rail.minimumSizeHint(), self._top
        strips = [s.minimumSizeHint().height() + _GAP for s in self._strips if s.isVisible()]
        beside = self.rail.width() + _GAP + page.width()
        high = (
            top.minimumSizeHint().height() + _GAP + max(rail.height(), page.height() + sum(strips))
        )
        left, above, right, below = _EDGES
        return QSize(left + max(top.one_row(), beside) + right, above + high + below)

    # --- acts ------------------------------------------------------------------------------------

    def open(self, path: Path) -> None:
        """Open a photo; over a job that has mixes, ask whose it is."""
        note_file(path)
        self.show_page("colour")
        self.trouble.hide()
        self.session.open(path)
        self.photo_offer.offer()

    def open_sample(self, sample: SamplePhoto) -> None:
        """Open a sample photo with its marks."""
        self.show_page("colour")
        self.trouble.hide()
        self.session.open(sample.path, Marks(sample.grey, sample.cloth, sample.reflectance))
        self.photo_offer.offer()

    def set_dark(self, *, dark: bool) -> None:
        """Lay the bench in dark or light grey."""
        look = DARK if dark else LIGHT
        self._dressing.take(look)
        self._dress_all()
        self.rail.set_look(look)

    def set_letters(self, size: float) -> None:
        """Write all of the window so many times the usual size, now and from the next start on."""
        set_letters(size)
        keep_letters(letters())
        self._dressing.undress()
        self._dress_all()

    def _dress_all(self) -> None:
        """Dress what is always in view, and then the page in view by its parts."""
        bars = (*self._area.bars(), self._rail_area.verticalScrollBar())
        always: tuple[QWidget, ...] = (self._top, self.rail, *self._strips, *bars)
        for part in always:
            self._dressing.dress(part)
        page = self._stack.currentWidget()
        if isinstance(page, Page | ColourPage):
            self._dressing.dress_in_turn(page.dressed_parts())

    def _start_again(self) -> None:
        """Close, and ask for the window to be opened anew."""
        if self.close():
            QApplication.exit(AGAIN)

    def _ask_photo(self) -> None:
        name, _ = ask_open(self, words.OPEN_PHOTO, self._last_folder, words.PHOTO_FILES)
        if name:
            self._last_folder = str(Path(name).parent)
            self.open(Path(name))

    def _bring_in(self, path: Path) -> None:
        """Bring in a job from its file, on the page where jobs are."""
        from swatchwright.desktop.pages.brief_page import BriefPage

        self.trouble.hide()
        self.show_page("brief")
        page = self.page("brief")
        if isinstance(page, BriefPage):
            page.bring_in(path)

    def show_shelf(self) -> None:
        """Show the paints of the shelf."""
        self.show_page("shelf")

    def show_reach(self) -> None:
        """Show what colours the shelf reaches in a window of its own."""
        self.reach_window = ReachWindow(self.session, self._top)
        self.reach_window.show()

    # --- showing ---------------------------------------------------------------------------------

    def _show_job(self) -> None:
        """Say on every page whose job is on the bench, and in the title of the window."""
        job = self.desk.job
        told = "" if job is None else keeping.job_line(job.title, job.client)
        self.job_told.say(told)
        self.setWindowTitle(f"{told} – {words.TITLE}" if told else words.TITLE)
        before, self._job_shown = self._job_shown, None if job is None else job.id
        # What she works at without a job, and then keeps with one, stays where it is.
        if before not in (None, self._job_shown):
            self._to_top()

    def _to_top(self) -> None:
        """Let another job begin at the top of its pages, not where the last one was scrolled to."""
        for area in (self._area, *self._stack.findChildren(ScrollArea)):
            area.verticalScrollBar().setValue(0)
            area.horizontalScrollBar().setValue(0)

    def _make_room(self, noting: bool) -> None:  # noqa: FBT001 - as the signal tells it
        """Let what was just done stand where the job and the shelf are named, for a while."""
        self.job_told.setHidden(noting)
        # In two rows there is room enough, and the second goes on holding it.
        self.shelf_told.setHidden(noting and self._top.abreast)

    def _wishes_changed(self) -> None:
        """Say no more what cannot be kept; on the pages of shelf and mixes it is told in place."""
        in_place = (self._made.get("shelf"), self.colour_page)
        if self.session.wish_trouble is None or self._stack.currentWidget() in in_place:
            self.trouble.hide()

    # --- Qt --------------------------------------------------------------------------------------

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take a dragged file."""
        if any(url.isLocalFile() for url in event.mimeData().urls()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open a dropped photo or shelf, or bring in a dropped job."""
        paths = [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
        for path in paths[:1]:
            kind = path.suffix.lower()
            if kind == ".csv":
                self.session.open_shelf(path)
            elif kind == SUFFIX:
                self._bring_in(path)
            else:
                self.open(path)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Keep the field she is in, and end all work before the window goes."""
        focused = self.focusWidget()
        if focused is not None:
            focused.clearFocus()
        # A page that waits for a hand to rest keeps what it has when it goes out of view.
        self._stack.hide()
        self.keeping.memory.close()
        self.session.close()
        self.desk.close()
        super().closeEvent(event)


def _button(text: str, key: QKeySequence.StandardKey, act: object) -> QPushButton:
    button = QPushButton(text)
    button.setShortcut(QKeySequence(key))
    button.clicked.connect(act)
    return button


def _menu_button(text: str, menu: QMenu) -> QToolButton:
    button = QToolButton()
    button.setText(text)
    button.setMenu(menu)
    button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
    return button
