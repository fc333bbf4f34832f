#!/usr/bin/python3
"""Makes the report's and the window's typeface from Fira Sans.

usage: subset.py PACKAGE OUT    PACKAGE: the unpacked npm package @expo-google-fonts/fira-sans 0.4.1

Keeps Latin, Greek and Cyrillic letters and the signs of the trade; makes the figures tabular, so that
columns and changing readings stand still; adds the thin space that sets a unit apart; names the two
weights as two families, since that is how both Java and a page ask for them. Needs fonttools and
brotli (Debian: fonttools, python3-brotli).
"""
import sys
from fontTools import subset
from fontTools.ttLib import TTFont

LETTERS = [(0x20, 0x7E), (0xA0, 0x17F), (0x218, 0x21B), (0x2C6, 0x2C6), (0x2DA, 0x2DA), (0x2DC, 0x2DC),
           (0x384, 0x3CE), (0x400, 0x45F)]
SIGNS = "‐‑‒–—‘’‚“”„†•…‰‹›€™Ω←↑→↓−√∞≈≠≤≥\N{REPLACEMENT CHARACTER}"
FAMILIES = {"400Regular/FiraSans_400Regular": "Fira Tabular",
            "600SemiBold/FiraSans_600SemiBold": "Fira Tabular SemiBold"}


def tabular(font):
    """Lets each figure's character show the tabular figure, after the font's own tnum feature."""
    swap = {}
    table = font["GSUB"].table
    for record in table.FeatureList.FeatureRecord:
        if record.FeatureTag == "tnum":
            for index in record.Feature.LookupListIndex:
                for sub in table.LookupList.Lookup[index].SubTable:
                    swap.update(getattr(sub, "ExtSubTable", sub).mapping)
    for cmap in font["cmap"].tables:
        for code, glyph in list(cmap.cmap.items()):
            if chr(code) in "0123456789":
                cmap.cmap[code] = swap.get(glyph, glyph)


def thin_spaces(font):
    from fontTools.ttLib.tables._g_l_y_f import Glyph
    glyph = Glyph()
    glyph.numberOfContours = 0
    font.setGlyphOrder(font.getGlyphOrder() + ["thinspace"])
    font["glyf"]["thinspace"] = glyph
    font["hmtx"]["thinspace"] = (font["head"].unitsPerEm // 6, 0)
    for cmap in font["cmap"].tables:
        if cmap.isUnicode():
            cmap.cmap[0x2009] = cmap.cmap[0x202F] = "thinspace"


def rename(font, family):
    for record in list(font["name"].names):
        if record.nameID in (16, 17, 21, 22, 25):
            font["name"].removeNames(nameID=record.nameID)
    for identity, text in ((1, family), (2, "Regular"), (3, family + " of Toothmark"), (4, family),
                           (6, family.replace(" ", ""))):
        font["name"].setName(text, identity, 3, 1, 0x409)
        font["name"].removeNames(nameID=identity, platformID=1)


def main():
    package, out = sys.argv[1:]
    for file, family in FAMILIES.items():
        font = TTFont(f"{package}/{file}.ttf", recalcTimestamp=False)
        tabular(font)
        thin_spaces(font)
        options = subset.Options(layout_features=["kern", "mark", "mkmk", "ccmp", "locl"], hinting=False,
                                 recalc_timestamp=False, name_IDs=[0, 1, 2, 3, 4, 5, 6, 13, 14])
        cutter = subset.Subsetter(options)
        cutter.populate(unicodes=[c for a, b in LETTERS for c in range(a, b + 1)] + [0x2009, 0x202F],
                        text=SIGNS)
        cutter.subset(font)
        rename(font, family)
        stem = f"{out}/{family.replace(' ', '-').lower()}"
        font.save(stem + ".ttf")
        font.flavor = "woff2"
        font.save(stem + ".woff2")


main()
