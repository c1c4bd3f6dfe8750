"""Cuts the faces to what the page needs, and figures whose zero has no slash.

Each face is two files: what the page itself is written with, and the rest of Latin-1, which a browser fetches where a job has such letters
(`unicode-range` in style/fonts.css, which is written here too).

The originals are the latin files of the npm packages @fontsource/barlow-semi-condensed and @fontsource/red-hat-mono (SIL OFL 1.1; neither
licence reserves a name). `pip install fonttools brotli`, then `python docs/faces.py FOLDER_WITH_THE_ORIGINALS`.
"""

import sys
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont, newTable
from fontTools.ttLib.tables._g_l_y_f import GlyphCoordinates
from fontTools.ttLib.tables.ttProgram import Program

FACES = [(face, weight) for face in ("barlow-semi-condensed", "red-hat-mono") for weight in (400, 600)]
# What the page is written with: ASCII, and the signs and marks of its figures and sentences. A first visit waits for these.
FIRST = [*range(0x20, 0x7F), 0xA0, 0xA7, *range(0xB0, 0xB4), 0xB5, 0xB7, *range(0xBC, 0xBF), 0xD7, 0xE9, 0xF7, 0xF8]
FIRST += [*range(0x2010, 0x2016), *range(0x2018, 0x201E), 0x2026, 0x2032, 0x2033, 0x2212]
# Latin-1 and what else is typed in its languages.
ALL = [*range(0x20, 0x7F), *range(0xA0, 0x100), 0x131, 0x152, 0x153, *range(0x2010, 0x2027), 0x2032, 0x2033, 0x2044, 0x2212]
PIECES = {"latin": FIRST, "accents": [letter for letter in ALL if letter not in FIRST]}


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


def cut(original, letters, out):
    options = subset.Options()
    options.hinting = False
    options.layout_features = ["kern", "tnum"]
    options.flavor = "woff2"
    font = subset.load_font(original, options)
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=letters)
    subsetter.subset(font)
    if ord("0") in letters:
        open_zero(font)
    smooth(font)
    subset.save_font(font, out, options)
    return out.stat().st_size


def ranges(letters):
    """`U+20-7E, U+A0`: runs of letters as a style sheet writes them."""
    runs = []
    for letter in sorted(letters):
        if runs and runs[-1][1] == letter - 1:
            runs[-1][1] = letter
        else:
            runs.append([letter, letter])
    return ", ".join(f"U+{first:X}" if first == last else f"U+{first:X}-{last:X}" for first, last in runs)


def rule(face, weight, piece, letters):
    family = face.title().replace("-", " ")
    return (
        f'@font-face {{ font-family: "{family}"; font-weight: {weight}; font-display: swap; '
        f'src: url("fonts/{face}-{piece}-{weight}-normal.woff2") format("woff2"); unicode-range: {ranges(letters)}; }}'
    )


if __name__ == "__main__":
    project = Path(__file__).parent.parent
    originals = Path(sys.argv[1])
    rules = ["/* The two faces, served from here; their licences (SIL OFL 1.1) stand beside the files. docs/faces.py cut them and wrote this. */"]
    for face, weight in FACES:
        original = originals / f"{face}-latin-{weight}-normal.woff2"
        for piece, letters in PIECES.items():
            out = project / "public" / "fonts" / f"{face}-{piece}-{weight}-normal.woff2"
            print(out.name, original.stat().st_size, "to", cut(original, letters, out))
            rules.append(rule(face, weight, piece, letters))
    (project / "style" / "fonts.css").write_text("\n".join(rules) + "\n")
