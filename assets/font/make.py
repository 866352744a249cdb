"""Turns one weight of Inter (CFF) into a small TrueType file.

usage: make.py IN.otf OUT.ttf WEIGHT

Steps: the ten figures become the tabular ones, the character set is cut down,
cubic outlines become quadratic, the em becomes 1000 units (so that advances are
whole thousandths, which is what PDF stores), the family gets its own name.
"""
import sys

from fontTools import subset
from fontTools.pens.cu2quPen import Cu2QuPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont, newTable
from fontTools.ttLib.scaleUpem import scale_upem

FAMILY = "Gloamline Sans"
CLASS = {"Regular": 400, "Medium": 500, "Bold": 700}

RANGES = [
    (0x20, 0x7E),      # Latin
    (0xA0, 0x17F),     # Latin-1 and Extended-A (Welsh, Sami, Baltic)
    (0x1CD, 0x1DC), (0x1E4, 0x1ED), (0x1F8, 0x21F),  # parts of Extended-B
    (0x2B9, 0x2BC), (0x2C6, 0x2C7), (0x2D8, 0x2DD),
    (0x300, 0x30C), (0x323, 0x328),                  # combining marks
    (0x386, 0x3CE),    # Greek
    (0x1E02, 0x1E03), (0x1E0A, 0x1E0B), (0x1E1E, 0x1E1F), (0x1E40, 0x1E41),
    (0x1E56, 0x1E57), (0x1E60, 0x1E61), (0x1E6A, 0x1E6B),  # old Irish dotted letters
    (0x1E80, 0x1E85), (0x1E9E, 0x1E9E), (0x1EF2, 0x1EF3),  # Welsh
    (0x2002, 0x200B), (0x2010, 0x2015), (0x2018, 0x201E), (0x2020, 0x2022),
    (0x2026, 0x2026), (0x202F, 0x202F), (0x2030, 0x2030), (0x2032, 0x2033),
    (0x2039, 0x203A), (0x2044, 0x2044), (0x2070, 0x2079), (0x207A, 0x207B),
    (0x2080, 0x2089), (0x20AC, 0x20AC), (0x2116, 0x2116), (0x2122, 0x2122),
    (0x2150, 0x215E),  # fractions
    (0x2190, 0x2199), (0x21A9, 0x21AA),
    (0x2205, 0x2205), (0x2206, 0x2206), (0x220F, 0x220F), (0x2211, 0x2212),
    (0x221A, 0x221A), (0x221E, 0x221E), (0x2248, 0x2248), (0x2260, 0x2260),
    (0x2264, 0x2265),
    (0x25A0, 0x25A1), (0x25B2, 0x25B3), (0x25B6, 0x25B7), (0x25BC, 0x25BD),
    (0x25C0, 0x25C1), (0x25C6, 0x25C7), (0x25CB, 0x25CB), (0x25CF, 0x25CF),
    (0x2605, 0x2606), (0x2713, 0x2713), (0x2717, 0x2717),
    (0xFFFD, 0xFFFD),
]


def tabular(font):
    """Points the characters 0 to 9 at the glyphs of the tnum feature."""
    gsub = font["GSUB"].table
    mapping = {}
    for rec in gsub.FeatureList.FeatureRecord:
        if rec.FeatureTag != "tnum":
            continue
        for index in rec.Feature.LookupListIndex:
            for sub in gsub.LookupList.Lookup[index].SubTable:
                mapping.update(getattr(sub, "ExtSubTable", sub).mapping)
    for table in font["cmap"].tables:
        for digit in range(0x30, 0x3A):
            if digit in table.cmap:
                glyph = table.cmap[digit]
                table.cmap[digit] = mapping.get(glyph, glyph)  # subtables may share one dict


def even(font):
    """Gives the ten figures one advance: the source is a unit or two out for 4."""
    cmap, metrics = font.getBestCmap(), font["hmtx"].metrics
    advance = metrics[cmap[0x30]][0]
    for digit in range(0x30, 0x3A):
        metrics[cmap[digit]] = (advance, metrics[cmap[digit]][1])


def cut(font):
    opts = subset.Options()
    opts.layout_features = ["kern", "mark", "mkmk", "ccmp", "locl"]
    opts.name_IDs = ["*"]
    opts.hinting = False
    opts.glyph_names = False
    opts.notdef_outline = True
    opts.drop_tables += ["DSIG", "meta", "STAT", "BASE", "VORG"]
    sub = subset.Subsetter(opts)
    sub.populate(unicodes=[u for lo, hi in RANGES for u in range(lo, hi + 1)])
    sub.subset(font)


def quadratic(font, max_err):
    order = font.getGlyphOrder()
    glyphs, source = {}, font.getGlyphSet()
    for name in order:
        pen = TTGlyphPen(source)
        source[name].draw(Cu2QuPen(pen, max_err, reverse_direction=True))
        glyphs[name] = pen.glyph()
    font["loca"] = newTable("loca")
    glyf = font["glyf"] = newTable("glyf")
    glyf.glyphOrder = order
    glyf.glyphs = glyphs
    del font["CFF "]
    maxp = font["maxp"] = newTable("maxp")
    maxp.tableVersion = 0x00010000
    for field in ("maxZones", "maxTwilightPoints", "maxStorage", "maxFunctionDefs",
                  "maxInstructionDefs", "maxStackElements", "maxSizeOfInstructions",
                  "maxComponentElements", "maxPoints", "maxContours",
                  "maxCompositePoints", "maxCompositeContours", "maxComponentDepth"):
        setattr(maxp, field, 1 if field == "maxZones" else 0)
    maxp.numGlyphs = len(order)
    for name in order:
        glyphs[name].recalcBounds(glyf)
    bearings(font)
    post = font["post"]
    post.formatType = 3.0
    post.extraNames, post.mapping = [], {}
    font.sfntVersion = "\000\001\000\000"


def bearings(font):
    """Sets each left bearing to the left edge: some programs shift glyphs by the difference."""
    glyf, metrics = font["glyf"], font["hmtx"].metrics
    for name, (advance, _) in metrics.items():
        glyph = glyf[name]
        metrics[name] = (advance, glyph.xMin if glyph.numberOfContours else 0)


def rename(font, weight):
    name = font["name"]
    family = FAMILY if weight in ("Regular", "Bold") else FAMILY + " " + weight
    style = weight if weight in ("Regular", "Bold") else "Regular"
    version = name.getDebugName(5)
    licence, url = name.getDebugName(13), name.getDebugName(14)
    name.names = []
    for ident, text in {
        0: "Copyright 2016-2022 The Inter Project Authors",
        1: family, 2: style, 3: "GloamlineSans-" + weight,
        4: FAMILY + " " + weight,
        5: version.split(";")[0],
        6: "GloamlineSans-" + weight,
        10: "A Modified Version of Inter: TrueType outlines, fewer characters, tabular figures",
        13: licence, 14: url, 16: FAMILY, 17: weight,
    }.items():
        name.setName(text, ident, 3, 1, 0x409)
    font["OS/2"].usWeightClass = CLASS[weight]
    font["OS/2"].achVendID = "NONE"


def main():
    source, target, weight = sys.argv[1:]
    font = TTFont(source, recalcTimestamp=False)
    tabular(font)
    cut(font)
    quadratic(font, 1.0)
    scale_upem(font, 1000)
    even(font)
    bearings(font)
    rename(font, weight)
    font["head"].modified = font["head"].created
    font["head"].glyphDataFormat = 0
    font.save(target)


main()
