"""Files, prints and codes of a sheet, and a code read back."""

from __future__ import annotations

import shutil
from dataclasses import replace
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
import pypdfium2
import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, Qt
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QFileDialog

from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.recipes import typed_colour
from swatchwright.acts.samples import sample_photos
from swatchwright.acts.sheet import Paper, pictures_of, read_code
from swatchwright.acts.sheet_form import SheetForm, page_size
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop import words as common
from swatchwright.desktop.files import last_folder
from swatchwright.desktop.pages.sheet_page import SheetPage
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.sheet_printing import print_pages, printer_for
from swatchwright.desktop.words import sheet as words
from swatchwright.errors import MendableError
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from window.sheet_hands import (
    LEFT,
    PATIENCE,
    ZONES,
    choose,
    document,
    of_png,
    rest,
    text_of,
    unlike,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

CODE = """SWATCHWRIGHT 1
title Blanket box
day 2026-03-01
ml 500
lab 46.0 34.0 24.0
dry 46.0 34.0 24.0
mix strong-red-orange=361 Strong red, slightly orange
mix pale-blue-greyish=96 Pale blue, greyish
mix strong-yellow-orange=43 Strong yellow, slightly orange"""


class TestFiles:
    """Files, prints and the clipboard."""

    def test_save_a_pdf(
        self, page: SheetPage, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """The button writes the PDF that is seen, with its ending where none was typed."""
        monkeypatch.setattr(
            QFileDialog,
            "getSaveFileName",
            lambda *_: (str(tmp_path / "my sheet"), words.PDF_FILES),
        )
        qtbot.mouseClick(page.bar.save, LEFT)
        written = tmp_path / "my sheet.pdf"
        qtbot.waitUntil(lambda: bool(page.side.done.text()), timeout=PATIENCE)
        assert page.side.done.text() == words.saved([written])
        assert str(tmp_path) in page.side.done.text()
        assert written.read_bytes() == document(page)
        with pypdfium2.PdfDocument(written) as opened:
            assert len(opened) == len(page.preview.leaves.images)

    def test_save_pictures(
        self, box: SheetPage, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """As pictures each page is a file, in colour even while it is seen in black and white."""
        qtbot.mouseClick(box.bar.grey, LEFT)
        rest(box, qtbot)
        monkeypatch.setattr(
            QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "box"), words.PNG_FILES)
        )
        qtbot.keyClick(box.window(), Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
        qtbot.waitUntil(lambda: bool(box.side.done.text()), timeout=PATIENCE)
        files = sorted(tmp_path.glob("box*.png"))
        assert len(files) == len(box.preview.leaves.images) > 1
        for file, png in zip(files, pictures_of(document(box)), strict=True):
            assert np.array_equal(of_png(file.read_bytes()), of_png(png))

    def test_what_was_just_chosen_is_what_is_saved(
        self, page: SheetPage, tmp_path: Path, qtbot: QtBot
    ) -> None:
        """A file asked for before the preview has caught up has the choice in it."""
        choose(page.choices.paper, Paper.LETTER)
        page.save(tmp_path / "letter.pdf")
        qtbot.waitUntil(lambda: bool(page.side.done.text()), timeout=PATIENCE)
        with pypdfium2.PdfDocument(tmp_path / "letter.pdf") as opened:
            assert opened[0].get_size() == pytest.approx((612, 792), abs=0.5)

    def test_a_file_that_cannot_be(
        self, window: Window, page: SheetPage, tmp_path: Path, settle: Settle, qtbot: QtBot
    ) -> None:
        """A folder that is not there is said, and the sheet stays."""
        page.save(tmp_path / "nowhere" / "sheet.pdf")
        settle()
        qtbot.waitUntil(window.trouble.isVisible)
        assert "could not be written" in window.trouble.text()
        assert page.preview.isVisible()

    def test_the_name_that_is_proposed(
        self, box: SheetPage, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """It holds piece and client, in plain letters."""
        asked: list[str] = []

        def ask(_: object, _title: str, name: str, _kinds: str) -> tuple[str, str]:
            asked.append(name)
            return "", ""

        monkeypatch.setattr(QFileDialog, "getSaveFileName", ask)
        qtbot.mouseClick(box.bar.save, LEFT)
        assert [Path(name).name for name in asked] == ["blanket-box-harbour-workshop-sheet.pdf"]
        label = SheetForm(as_label=True)
        assert words.file_name("Écran/poêle", "M. Ö.", label) == "ecran-poele-m-oe-label.pdf"
        assert words.file_name("", "箱", SheetForm()) == "recipe-sheet.pdf"

    def test_the_folder_that_is_proposed(
        self,
        window: Window,
        box: SheetPage,
        tmp_path: Path,
        settle: Settle,
        qtbot: QtBot,
        monkeypatch: pytest.MonkeyPatch,
    ) -> None:
        """It is that of the photo last opened; once a file was saved, that of the file."""
        asked: list[Path] = []
        there, after = tmp_path / "photos", tmp_path / "sheets"
        for folder in (there, after):
            folder.mkdir()

        def ask(_: object, _title: str, name: str, _kinds: str) -> tuple[str, str]:
            asked.append(Path(name).parent)
            return str(after / "sheet.pdf"), words.PDF_FILES

        monkeypatch.setattr(QFileDialog, "getSaveFileName", ask)
        photo = Path(shutil.copy(sample_photos()[0].path, there))
        window.open(photo)
        settle()
        window.show_page("sheet")
        settle()
        for _ in range(2):
            qtbot.waitUntil(box.bar.save.isEnabled, timeout=PATIENCE)
            qtbot.mouseClick(box.bar.save, LEFT)
            settle()
        assert asked == [there, after]
        after.joinpath("sheet.pdf").unlink()
        after.rmdir()
        assert last_folder().is_dir()

    @pytest.mark.parametrize("what", ["sheet", "label"])
    def test_print(self, page: SheetPage, tmp_path: Path, qtbot: QtBot, what: str) -> None:
        """What a printer gets is the pages at their true size: here it prints to a PDF."""
        qtbot.mouseClick(page.choices.label if what == "label" else page.choices.sheet, LEFT)
        rest(page, qtbot)
        printer = printer_for(page.form)
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(tmp_path / "print.pdf"))
        page.print_on(printer)
        qtbot.waitUntil(lambda: page.side.done.text() == words.PRINTED, timeout=PATIENCE)
        with pypdfium2.PdfDocument(tmp_path / "print.pdf") as opened:
            wide, high = page_size(page.form)
            points = (wide / 25.4 * 72, high / 25.4 * 72)
            assert opened[0].get_size() == pytest.approx(points, abs=1.5)
            assert len(opened) == len(page.preview.leaves.images)
        ours, theirs = (
            Image.open(BytesIO(pictures_of(pdf, dpi=100)[0])).convert("L")
            for pdf in (document(page), (tmp_path / "print.pdf").read_bytes())
        )
        shrunk = theirs.resize((round(theirs.width * 0.97), round(theirs.height * 0.97)))
        assert unlike(ours, theirs) < unlike(ours, shrunk) / 4

    def test_a_printer_is_asked_for(self, page: SheetPage, qtbot: QtBot) -> None:
        """The button asks which printer; put away it prints nothing, and taken it prints."""
        from PySide6.QtPrintSupport import QPrintDialog

        def asked() -> list[Any]:
            return [d for d in page.findChildren(QPrintDialog) if d.isVisible()]

        qtbot.mouseClick(page.bar.print, LEFT)
        qtbot.waitUntil(lambda: bool(asked()))
        dialog = asked()[0]
        assert dialog.printer().fullPage()
        dialog.reject()
        qtbot.waitUntil(lambda: not asked())
        assert not page.side.done.text()

    @pytest.mark.qt_log_ignore("QPainter::begin")
    def test_a_printer_that_refuses(self, tmp_path: Path) -> None:
        """A printer that takes nothing is told of with what to do."""
        printer = printer_for(SheetForm())
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(tmp_path / "nowhere" / "print.pdf"))
        with pytest.raises(MendableError) as caught:
            print_pages(printer, [QImage(10, 10, QImage.Format.Format_RGB32)], 300)
        assert caught.value.mend == words.NOT_PRINTED_MEND

    def test_copy_the_code(self, page: SheetPage, qtbot: QtBot) -> None:
        """The text on the clipboard is that of the code, and is the recipe again."""
        qtbot.mouseClick(page.bar.copy, LEFT)
        qtbot.waitUntil(lambda: page.side.done.text() == words.COPIED)
        recipe = read_code(QGuiApplication.clipboard().text())
        assert page.made is not None
        told = {paint.id: 100 * paint.share for paint in page.made.content.zones[0].paints}
        assert {paint.id: paint.parts for paint in recipe.paints} == pytest.approx(told)

    def test_copy_the_code_of_a_zone(self, box: SheetPage, qtbot: QtBot) -> None:
        """Of two zones it is asked whose code is wanted."""
        asked = box.bar.menu.actions()
        assert [action.text() for action in asked] == [words.copy_of(z) for z in ZONES]
        asked[1].trigger()
        qtbot.waitUntil(lambda: box.side.done.text() == words.COPIED)
        assert read_code(QGuiApplication.clipboard().text()).zone == "top"


class TestCode:
    """The text of a code, read back."""

    def test_the_recipe_is_shown(self, empty: SheetPage, settle: Settle, qtbot: QtBot) -> None:
        """Pasted text gives colours that touch, parts and names, and what the shelf gives."""
        code = empty.code
        QGuiApplication.clipboard().setText(CODE)
        code.text.setFocus()
        qtbot.keyClick(code.text, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
        settle()
        assert code.head.text() == "Blanket box, 2026-03-01, 500 ml"
        shown = [lab.text() for lab in code.findChildren(type(code.head)) if lab.isVisible()]
        for text in ("361 ml", "96 ml", "Pale blue, greyish"):
            assert text in shown
        assert code.on_shelf.text() == words.SAME_ON_SHELF
        image = code.fields.grab().toImage()
        words_told = [word for word, _ in code.fields.colours]
        assert words_told == [words.CODE_WANTED, words.CODE_DRY, words.SHELF_DRY]
        high = image.height() // 3
        for place, (_, lab) in enumerate(code.fields.colours):
            for y in (place * high + 1, (place + 1) * high - 2):
                shade = image.pixelColor(image.width() - 3, y)
                assert shade.name() == screen_colour(lab).name()

    def test_the_sheet_says_where(self, page: SheetPage) -> None:
        """What is printed of it names page and heading as they stand in the window."""
        told = " ".join(text_of(document(page)).split())
        assert f"page {common.PAGE_SHEET}" in told
        assert f"“{words.CODE}”" in told

    def test_another_shelf(self, empty: SheetPage, settle: Settle) -> None:
        """A shelf whose paints differ is told of by how far it dries from what it was."""
        shelf = demo_shelf()
        told = replace(read_code(CODE), dry=typed_colour(46, 20, 24).lab)
        empty.code.text.setPlainText(CODE.replace("dry 46.0 34.0 24.0", "dry 46.0 20.0 24.0"))
        settle()
        assert told.dry is not None
        now = look_of_mix(shelf, [(paint.id, paint.parts) for paint in told.paints]).dry
        apart = float(delta_e_2000(told.dry.triple, now.triple))
        assert f"it dries {apart:.1f} from what it was" in empty.code.on_shelf.text()
        few = tuple(paint for paint in shelf.paints if paint.id != "pale-blue-greyish")
        empty.session.use_shelf(replace(shelf, paints=few))
        empty.code.text.setPlainText(CODE)
        settle()
        assert "Pale blue, greyish" in empty.code.on_shelf.text()
        assert len(empty.code.fields.colours) == 2

    def test_its_colour_is_wanted(
        self, window: Window, empty: SheetPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """The button wants the colour of the recipe, and mixes are found for it."""
        empty.code.text.setPlainText(CODE)
        settle()
        qtbot.mouseClick(empty.code.want, LEFT)
        settle()
        wanted, recipes = window.session.wanted, window.session.recipes
        assert wanted is not None
        assert wanted.lab == Lab(46, 34, 24)
        assert recipes is not None
        assert recipes.recipes[0].recipe.delta_e < 0.5
        assert empty.code.told.text() == words.WANTED_NOW
        rest(empty, qtbot)
        assert empty.made is not None

    def test_no_code(self, empty: SheetPage) -> None:
        """Text that is no code is said to be none with what to do, and goes with the text."""
        code = empty.code
        code.text.setPlainText("two coats, then wax")
        assert code.trouble.isVisible()
        assert "Scan the code of a recipe sheet again" in code.trouble.text()
        assert not code.want.isVisible()
        code.text.clear()
        assert not code.trouble.isVisible()

    def test_a_code_without_colours(self, empty: SheetPage, settle: Settle) -> None:
        """A code of paints alone is shown, and no colour can be wanted of it."""
        empty.code.text.setPlainText("SWATCHWRIGHT 1\nmix soft-black=1")
        settle()
        assert empty.code.head.text() == "A recipe"
        assert empty.code.told.text() == words.NO_COLOUR
        assert not empty.code.want.isEnabled()

    def test_far_too_much_text(self, empty: SheetPage) -> None:
        """Of a pasted book only the beginning is taken, and it is said to be no code."""
        data = QMimeData()
        data.setText("x" * 3_000_000)
        empty.code.text.insertFromMimeData(data)
        assert len(empty.code.text.toPlainText()) <= 20_001
        assert empty.code.trouble.isVisible()
