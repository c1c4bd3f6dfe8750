"""Cuts the faces to what the page needs: 41 kB for 55, and figures whose zero has no slash.

The originals are the latin files of the npm packages @fontsource/barlow-semi-condensed and @fontsource/red-hat-mono (SIL OFL 1.1; neither
licence reserves a name). `pip install fonttools brotli`, then `python docs/faces.py FOLDER_WITH_THE_ORIGINALS`.
"""

import sys
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont, newTable
from fontTools.ttLib.tables._g_l_y_f import GlyphCoordinates
from fontTools.ttLib.tables.ttProgram import Program

FACES = [f"{face}-latin-{weight}-normal" for face in ("barlow-semi-condensed", "red-hat-mono") for weight in (400, 600)]
# Latin-1, the dashes, quotes and primes, and the minus of figures.
LETTERS = [*range(0x20, 0x7F), *range(0xA0, 0x100), 0x131, 0x152, 0x153, *range(0x2010, 0x2027), 0x2032, 0x2033, 0x2044, 0x2212]


def open_zero(font):
    """Takes the slash out of the zero: its two counters become one, a quarter of the left one mirrored both ways."""
    glyph = font["glyf"]["zero"]
    points, ends, flags = glyph.getCoordinates(font["glyf"])
    if len(ends) != 3:
        return
    every = list(zip(points, flags))
    outer, counter = every[: ends[0] + 1], every[ends[0] + 1 : ends[1] + 1]
    centre, middle = font["hmtx"]["zero"][0] // 2, counter[0][0][1]
    # It begins at its leftmost point and comes back to it over the top.
    top = max(at for at, ((x, _), _) in enumerate(counter) if x == centre)
    quarter = [counter[0], *counter[:top - 1:-1]]
    half = quarter + [((2 * centre - x, y), flag) for (x, y), flag in quarter[-2::-1]]
    ring = half + [((x, 2 * middle - y), flag) for (x, y), flag in half[-2:0:-1]]
    # A counter runs against the outline.
    both = outer + ring[::-1]
    glyph.coordinates = GlyphCoordinates([point for point, _ in both])
    glyph.flags = bytearray(flag for _, flag in both)
    glyph.endPtsOfContours = [len(outer) - 1, len(both) - 1]
    glyph.numberOfContours = 2
    glyph.recalcBounds(font["glyf"])


def smooth(font):
    """Says that a face without hints is smoothed in both directions at all sizes, and keeps thin strokes whole."""
    font["gasp"] = newTable("gasp")
    font["gasp"].version, font["gasp"].gaspRange = 1, {0xFFFF: 15}
    font["prep"] = newTable("prep")
    font["prep"].program = Program()
    font["prep"].program.fromAssembly(["PUSHW[]", "511", "SCANCTRL[]", "PUSHB[]", "4", "SCANTYPE[]"])


def cut(name, originals, out):
    options = subset.Options()
    options.hinting = False
    options.layout_features = ["kern", "tnum"]
    options.flavor = "woff2"
    font = subset.load_font(originals / f"{name}.woff2", options)
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=LETTERS)
    subsetter.subset(font)
    open_zero(font)
    smooth(font)
    subset.save_font(font, out / f"{name}.woff2", options)
    return (out / f"{name}.woff2").stat().st_size


if __name__ == "__main__":
    fonts = Path(__file__).parent.parent / "public" / "fonts"
    originals = Path(sys.argv[1])
    for face in FACES:
        print(face, (originals / f"{face}.woff2").stat().st_size, "to", cut(face, originals, fonts))
