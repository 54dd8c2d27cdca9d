"""Writes one spec table in many workbooks with openpyxl, and breaks some of them; neither is of this project."""
import re
import sys
import zipfile

import openpyxl

OUT = sys.argv[1] + "/"
SIZES = [38, 40, 42, 44]
ROWS = [("Bicep", [34.7, 36, 37.3, 38.6]), ("Sleeve length", [59.5, 60, 60.5, 61]), ("Cap height", [13.1, 13.5, 13.9, 14.3]),
        ("Armhole", [43.5, 45, 46.5, 48])]


def fill(sheet, unit="", form="General", factor=1.0, first=1):
    sheet.cell(first, 1, "Choir gown")
    sheet.cell(first + 2, 1, "Point of measure" + unit)
    for j, size in enumerate(SIZES):
        sheet.cell(first + 2, 2 + j, size)
    for i, (name, values) in enumerate(ROWS):
        sheet.cell(first + 3 + i, 1, name)
        for j, value in enumerate(values):
            sheet.cell(first + 3 + i, 2 + j, value * factor).number_format = form


def book(name, *arguments, **named):
    wb = openpyxl.Workbook()
    fill(wb.active, *arguments, **named)
    wb.save(OUT + name)
    return wb


def parts(name):
    with zipfile.ZipFile(OUT + name) as z:
        return {n: z.read(n) for n in z.namelist()}


def put(name, content):
    with zipfile.ZipFile(OUT + name, "w", zipfile.ZIP_DEFLATED) as z:
        for n, c in content.items():
            z.writestr(n, c)


SHEET = "xl/worksheets/sheet1.xml"
SHARED = "xl/sharedStrings.xml"
book("plain.xlsx", " (cm)")
book("unit-in-format.xlsx", form='0.0" cm"')
book("inches-in-format.xlsx", form='# ?/8\\"', factor=1 / 2.54)
# Sums of tenths as computers store them, 36.900000000000006.
book("as-shown.xlsx", " (cm)", "0.0", factor=1.0004)

wb = openpyxl.Workbook()
wb.active.title = "Cover"
wb.active["B2"] = "Season"
fill(wb.create_sheet("Measures"), " (cm)", first=4)
fill(wb.create_sheet("Old"), " (cm)")
secret = wb.create_sheet("Hidden")
fill(secret, " (cm)")
secret.sheet_state = "hidden"
wb.create_sheet("Long")["A6000"] = "far"
wb.save(OUT + "sheets.xlsx")

wb = openpyxl.Workbook()
fill(wb.active, " (cm)")
wb.active.merge_cells("A1:E1")
wb.active.column_dimensions["C"].hidden = True
wb.save(OUT + "rich.xlsx")


def inline(content):
    """The texts in their cells, as some versions of openpyxl write them."""
    if SHARED not in content:
        return content
    texts = re.findall("<si><t[^>]*>(.*?)</t></si>", content[SHARED].decode())
    sheet = re.sub(r'<c r="(\w+)"((?: s="\d+")?) t="s"><v>(\d+)</v></c>',
                   lambda m: '<c r="%s"%s t="inlineStr"><is><t>%s</t></is></c>' % (m[1], m[2], texts[int(m[3])]), content[SHEET].decode())
    return {n: sheet.encode() if n == SHEET else c for n, c in content.items() if n != SHARED}


def shared(content):
    """The texts in a part of their own, as spreadsheet programs write them."""
    texts = []

    def number(match):
        texts.append(match[3])
        return '<c r="%s"%s t="s"><v>%d</v></c>' % (match[1], match[2], len(texts) - 1)
    sheet = re.sub(r'<c r="(\w+)"((?: s="\d+")?) t="inlineStr"><is><t>(.*?)</t></is></c>', number, inline(content)[SHEET].decode())
    assert texts
    return {**content, SHEET: sheet.encode(), SHARED: ("<sst>" + "".join("<si><t>%s</t></si>" % t for t in texts) + "</sst>").encode()}


rich = shared(parts("rich.xlsx"))
rich[SHARED] = rich[SHARED].replace(
    b"<si><t>Bicep</t></si>", b"<si><r><rPr><b/></rPr><t>Bi</t></r><r><t>cep</t></r><rPh sb='0' eb='1'><t>x</t></rPh></si>")
assert b"rPh" in rich[SHARED]
put("rich.xlsx", rich)

# Results that a spreadsheet program has stored beside its formulas, and a macro.
plain = shared(parts("plain.xlsx"))
sheet = plain[SHEET].decode()
cells = inline(parts("plain.xlsx"))
cells[SHEET] = cells[SHEET].replace(b"<v>36</v>", b"<f>34.7+1.3</f><v>36</v>")
assert b"<f>" in cells[SHEET]
put("inline.xlsm", {**cells, "xl/vbaProject.bin": b"\0" * 100})

book("long-format.xlsx", " (cm)", '0.0"x"')
endless = parts("long-format.xlsx")
endless["xl/styles.xml"] = endless["xl/styles.xml"].replace(b"0.0&quot;x&quot;", b"0.0" + b"&quot;x&quot;" * 20_000)
assert len(endless["xl/styles.xml"]) > 200_000
put("long-format.xlsx", endless)

# What cannot be read.
book("formula.xlsx", " (cm)")
wb = openpyxl.load_workbook(OUT + "formula.xlsx")
wb.active["C5"] = "=B5+0.5"
wb.save(OUT + "formula.xlsx")


def broken(name, change):
    assert change(sheet) != sheet, name
    put(name, {n: change(sheet).encode() if n == SHEET else c for n, c in plain.items()})


entities = '<!DOCTYPE x [<!ENTITY a "ha"><!ENTITY b "' + "&a;" * 50 + '"><!ENTITY c "' + "&b;" * 50 + '">]>'
broken("entities.xlsx", lambda s: entities + re.sub("<v>36</v>", "<v>&c;</v>", s))
broken("external.xlsx", lambda s: '<!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]>' + s.replace("<v>36</v>", "<v>&e;</v>"))
broken("cut.xlsx", lambda s: s[: len(s) // 2])
broken("endless.xlsx", lambda s: s.replace("<v>36</v>", "<v>1E999</v>"))
broken("no-text.xlsx", lambda s: s.replace('t="s"><v>0</v>', 't="s"><v>999999</v>'))
broken("backwards.xlsx", lambda s: s.replace('r="C4"', 'r="A4"'))
broken("wide.xlsx", lambda s: s.replace('r="E4"', 'r="XFD4"'))
broken("deep.xlsx", lambda s: s.replace('r="7"', 'r="1048576"'))
broken("bomb.xlsx", lambda s: s + " " * 60_000_000)
put("picture-bomb.xlsx", {**plain, "xl/media/image1.png": b"\0" * 60_000_000})
put("many.xlsx", {**plain, **{"xl/a%d.xml" % i: b"" for i in range(3000)}})
listed = re.search(rb"<sheet [^>]*/>", plain["xl/workbook.xml"])[0]
put("repeated.xlsx", {**plain, "xl/workbook.xml": plain["xl/workbook.xml"].replace(listed, listed * 50)})
put("binary.xlsb", {"[Content_Types].xml": b"<Types/>", "xl/workbook.bin": b"\0"})
put("open.ods", {"mimetype": b"application/vnd.oasis.opendocument.spreadsheet", "content.xml": b"<x/>"})
with open(OUT + "plain.xlsx", "rb") as f:
    whole = f.read()
with open(OUT + "half.xlsx", "wb") as f:
    f.write(whole[: len(whole) // 2])
with open(OUT + "locked.xlsx", "wb") as f:
    f.write(bytes.fromhex("d0cf11e0a1b11ae1") + b"\0" * 600)
wb = openpyxl.Workbook()
wb.save(OUT + "empty.xlsx")
