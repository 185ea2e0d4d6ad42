"""The random walker with priors."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from skimage.segmentation import random_walker

from swatchwright.photo.repaint_strokes import UNMARKED
from swatchwright.photo.repaint_walk import edge_weights, walked

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Floats = NDArray[np.floating[Any]]

BETA = 130.0


def picture(seed: int, rows: int, columns: int) -> tuple[Floats, NDArray[np.uint8]]:
    """Give a noisy picture of three parts with a mark in each."""
    draw = np.random.default_rng(seed)
    image = np.zeros((rows, columns))
    image[:, columns // 3 :] = 0.4
    image[rows // 2 :, columns // 2 :] = 0.9
    image += 0.08 * draw.normal(size=image.shape)
    marks = np.full((rows, columns), UNMARKED, dtype=np.uint8)
    marks[2:5, 2:6] = 0
    marks[3:6, -6:-3] = 1
    marks[-6:-3, -7:-3] = 2
    return image, marks


@pytest.mark.parametrize(("rows", "columns"), [(40, 47), (90, 121)])
def test_without_priors_it_is_the_random_walker(rows: int, columns: int) -> None:
    """The chances are those of scikit-image's random walker, which solves the system directly.

    It scales its contrast by ten times the spread of the picture.
    """
    image, marks = picture(3, rows, columns)
    labels = np.where(marks == UNMARKED, 0, marks.astype(int) + 1)
    theirs = random_walker(image, labels, beta=BETA, mode="bf", return_full_prob=True)
    ours = walked(
        image[..., None].astype(np.float32),
        marks,
        np.full((3, rows, columns), 1 / 3, dtype=np.float32),
        contrast=BETA / (10 * image.std()),
        strength=0.0,
        near=1e-6,
    )
    assert np.abs(ours - theirs).max() < 0.01
    assert np.mean(ours.argmax(axis=0) == theirs.argmax(axis=0)) > 0.998


def test_with_priors_it_solves_the_system() -> None:
    """The solution is that of scipy's direct solver for the same sparse matrix [Grady2005]."""
    from scipy.sparse import coo_array, csc_array, diags_array
    from scipy.sparse.linalg import spsolve

    image, marks = picture(8, 24, 30)
    draw = np.random.default_rng(1).uniform(0.1, 1, (2, 24, 30))
    prior = draw / draw.sum(axis=0)
    marks[marks == 2] = 1
    across, down = edge_weights(image[..., None], 9.0)
    number = np.arange(marks.size).reshape(marks.shape)
    first = np.concatenate([number[:, :-1].ravel(), number[:-1].ravel()])
    second = np.concatenate([number[:, 1:].ravel(), number[1:].ravel()])
    weight = np.concatenate([across.ravel(), down.ravel()])
    half = coo_array((weight, (first, second)), shape=(marks.size, marks.size))
    links = csc_array(half + half.T)
    whole = csc_array(diags_array(links.sum(axis=0)) - links) + 0.05 * csc_array(
        diags_array(np.ones(marks.size))
    )
    known = (marks != UNMARKED).ravel()
    values = (marks == 0).ravel().astype(float)
    right = 0.05 * prior[0].ravel()[~known] - whole[~known][:, known] @ values[known]
    values[~known] = spsolve(csc_array(whole[~known][:, ~known]), right)
    ours = walked(image[..., None], marks, prior, contrast=9.0, strength=0.05, near=1e-7)
    assert ours[0] == pytest.approx(values.reshape(marks.shape), abs=1e-4)


@given(st.integers(0, 10_000), st.floats(0.0, 0.3), st.integers(12, 70))
def test_chances_are_chances(seed: int, strength: float, rows: int) -> None:
    """Whatever the picture, the chances sum to one, and are sure under the marks."""
    image, marks = picture(seed, rows, rows + 5)
    prior = np.full((3, *marks.shape), 1 / 3, dtype=np.float32)
    found = walked(
        image[..., None].astype(np.float32), marks, prior, contrast=20.0, strength=strength
    )
    assert found.min() >= 0
    assert found.sum(axis=0) == pytest.approx(np.ones(marks.shape), abs=1e-5)
    for label in range(3):
        assert np.all(found[label][marks == label] == 1)


def test_it_can_be_stopped() -> None:
    """What is called now and then may stop it by raising."""

    def stop() -> None:
        raise InterruptedError

    image, marks = picture(1, 60, 60)
    prior = np.full((3, 60, 60), 1 / 3, dtype=np.float32)
    with pytest.raises(InterruptedError):
        walked(image[..., None], marks, prior, contrast=20.0, strength=0.01, check=stop)
