"""Spec tables of sleeves as sewing rooms of ten countries make them, clean and with one fault each, as JSON lines on the standard output.

Shares no code with the product. Words and layouts are common practice, from memory; figures are invented. The same seed writes the same lines.
Usage: write_sheets.py [every] (every n-th sheet only)
"""
import base64
import json
import random
import sys
from fractions import Fraction

WORDS = {
    "en": {
        "bicep": ["Bicep", "Bicep width", "Upper arm circ.", "Muscle", "Sleeve width @ underarm"],
        "length": ["Sleeve length", "Slv length", "Sleeve length from shoulder", "Overarm length"],
        "capHeight": ["Cap height", "Crown height", "Sleeve cap height", "Slv cap ht"],
        "armhole": ["Armhole", "Armhole circumference", "Armscye", "Total armhole"],
        "elbow": ["Elbow", "Elbow width", "Elbow circ."],
        "wrist": ["Sleeve opening", "Wrist", "Cuff opening", "Sleeve hem"],
        "capLine": ["Cap seam length", "Sleeve cap seam", "Cap length"],
    },
    "de": {
        "bicep": ["Oberarmweite", "Oberarmumfang", "Ärmelweite Oberarm", "OA-Weite", "Ärmelbreite"],
        "length": ["Ärmellänge", "Ärmellg.", "Armlänge", "Ärmel-Länge"],
        "capHeight": ["Kugelhöhe", "Armkugelhöhe", "Ärmelkugelhöhe"],
        "armhole": ["Armloch", "Armlochumfang", "Armlochweite", "Armausschnitt"],
        "elbow": ["Ellbogenweite", "Ellenbogenweite", "Ellenbogenumfang"],
        "wrist": ["Saumweite", "Ärmelsaumweite", "Handgelenkweite", "Ärmelsaum"],
        "capLine": ["Armkugel", "Armkugellänge", "Kugelumfang", "Ärmelkugel"],
    },
    "fr": {
        "bicep": ["Tour de bras", "Largeur de manche", "Largeur bras", "Tour de biceps"],
        "length": ["Longueur de manche", "Longueur manche", "Long. manche"],
        "capHeight": ["Hauteur de tête", "Hauteur tête de manche", "Haut. tête de manche"],
        "armhole": ["Emmanchure", "Tour d'emmanchure", "Contour emmanchure"],
        "elbow": ["Tour de coude", "Largeur coude", "Coude"],
        "wrist": ["Bas de manche", "Tour de poignet", "Largeur bas de manche", "Ouverture manche"],
        "capLine": ["Tête de manche", "Longueur tête de manche"],
    },
    "es": {
        "bicep": ["Contorno de brazo", "Ancho de manga", "Ancho de brazo", "Contorno brazo"],
        "length": ["Largo de manga", "Largo manga", "Longitud de manga"],
        "capHeight": ["Altura de copa", "Altura copa", "Alto de copa", "Altura de cabeza de manga"],
        "armhole": ["Sisa", "Contorno de sisa", "Contorno sisa"],
        "elbow": ["Contorno de codo", "Ancho de codo", "Codo"],
        "wrist": ["Puño", "Bocamanga", "Contorno de puño", "Ancho de bocamanga"],
        "capLine": ["Contorno de copa", "Copa de manga", "Contorno copa"],
    },
    "it": {
        "bicep": ["Giro braccio", "Larghezza manica", "Circonferenza braccio", "Larghezza braccio"],
        "length": ["Lunghezza manica", "Lungh. manica", "Lunghezza della manica"],
        "capHeight": ["Altezza colmo", "Altezza colmo manica", "Alt. colmo"],
        "armhole": ["Giromanica", "Giro manica", "Scalfo"],
        "elbow": ["Giro gomito", "Larghezza gomito", "Gomito"],
        "wrist": ["Fondo manica", "Giro polso", "Polso", "Larghezza fondo manica"],
        "capLine": ["Colmo manica", "Giro colmo"],
    },
    "pt": {
        "bicep": ["Contorno do braço", "Largura da manga", "Largura do braço", "Bíceps"],
        "length": ["Comprimento da manga", "Comp. manga", "Comprimento manga"],
        "capHeight": ["Altura da cabeça da manga", "Altura da copa", "Altura cabeça manga"],
        "armhole": ["Cava", "Contorno da cava"],
        "elbow": ["Cotovelo", "Contorno do cotovelo", "Largura do cotovelo"],
        "wrist": ["Punho", "Boca da manga", "Largura da boca da manga", "Contorno do punho"],
        "capLine": ["Contorno da copa", "Cabeça da manga"],
    },
    "nl": {
        "bicep": ["Bovenarmwijdte", "Bovenarmomtrek", "Mouwwijdte", "Bovenarm"],
        "length": ["Mouwlengte", "Lengte mouw"],
        "capHeight": ["Kophoogte", "Mouwkophoogte"],
        "armhole": ["Armsgat", "Armsgatomtrek", "Armsgatwijdte"],
        "elbow": ["Elleboogwijdte", "Elleboog", "Elleboogomtrek"],
        "wrist": ["Polswijdte", "Mouwzoom", "Polsomtrek", "Mouwopening"],
        "capLine": ["Mouwkop", "Mouwkoplengte"],
    },
    "pl": {
        "bicep": ["Obwód ramienia", "Szerokość rękawa", "Szerokość ramienia", "Obwód rękawa"],
        "length": ["Długość rękawa", "Dł. rękawa"],
        "capHeight": ["Wysokość główki rękawa", "Wysokość główki", "Wys. główki rękawa"],
        "armhole": ["Podkrój pachy", "Obwód podkroju pachy", "Obwód pachy"],
        "elbow": ["Obwód łokcia", "Łokieć", "Szerokość w łokciu"],
        "wrist": ["Obwód nadgarstka", "Szerokość dołu rękawa", "Mankiet", "Dół rękawa"],
        "capLine": ["Obwód główki rękawa", "Długość główki rękawa"],
    },
    "tr": {
        "bicep": ["Pazı genişliği", "Pazı çevresi", "Kol genişliği", "Pazu"],
        "length": ["Kol boyu", "Kol uzunluğu"],
        "capHeight": ["Kol kafası yüksekliği", "Kol tepe yüksekliği"],
        "armhole": ["Kol evi", "Kol evi çevresi", "Kol oyuntusu"],
        "elbow": ["Dirsek genişliği", "Dirsek çevresi", "Dirsek"],
        "wrist": ["Bilek genişliği", "Kol ağzı", "Kol ağzı genişliği", "Bilek çevresi"],
        "capLine": ["Kol kafası çevresi", "Kol kafası"],
    },
    "ja": {
        "bicep": ["袖幅", "上腕囲", "二の腕回り", "袖巾"],
        "length": ["袖丈"],
        "capHeight": ["袖山の高さ", "袖山高", "袖山"],
        "armhole": ["アームホール", "袖ぐり", "AH"],
        "elbow": ["肘幅", "肘回り", "ひじ幅"],
        "wrist": ["袖口", "袖口幅", "袖口寸法"],
        "capLine": ["袖山線", "袖山の長さ"],
    },
}
HEADS = {
    "en": ("Point of measure", "Size", "Grade", "Tol. +/-", "Remarks"),
    "de": ("Maß", "Größe", "Sprung", "Toleranz", "Bemerkung"),
    "fr": ("Mesure", "Taille", "Évolution", "Tolérance", "Remarques"),
    "es": ("Medida", "Talla", "Escalado", "Tolerancia", "Notas"),
    "it": ("Misura", "Taglia", "Sviluppo", "Tolleranza", "Note"),
    "pt": ("Medida", "Tamanho", "Graduação", "Tolerância", "Notas"),
    "nl": ("Maat", "Maat", "Sprong", "Tolerantie", "Opmerking"),
    "pl": ("Wymiar", "Rozmiar", "Stopniowanie", "Tolerancja", "Uwagi"),
    "tr": ("Ölçü", "Beden", "Seri farkı", "Tolerans", "Not"),
    "ja": ("計測箇所", "サイズ", "ピッチ", "許容差", "備考"),
}
HALF = {"en": "1/2 {}", "de": "½ {}", "fr": "1/2 {}", "es": "1/2 {}", "it": "1/2 {}", "pt": "1/2 {}", "nl": "1/2 {}", "pl": "1/2 {}", "tr": "1/2 {}", "ja": "{} (1/2)"}
UNKNOWN = ["Zebra stripe depth", "Knöchelzwickel", "Kragensteg XY", "Pince fantaisie", "Bolsillo raro", "Rouches onder"]
RIGHT = ["bicep", "elbow", "wrist"]
CODED = {"cp1252": "windows-1252", "iso-8859-2": "iso-8859-2", "cp1254": "windows-1254", "shift_jis": "shift_jis"}
LEGACY = {"pl": "iso-8859-2", "tr": "cp1254", "ja": "shift_jis"}


def grade(rng):
    """A straight-line grade that follows women's bodies, mm per size."""
    count = rng.randint(5, 7)
    bicep = rng.uniform(345, 385)
    jump = rng.uniform(12.7, 14.6)
    armhole = rng.uniform(430, 480)
    grown = rng.uniform(14.5, 17)
    ease = rng.uniform(29, 40)
    lines = {
        "bicep": (bicep, jump),
        "length": (rng.uniform(575, 620), rng.uniform(1.5, 4)),
        "capHeight": (bicep * rng.uniform(0.35, 0.41), jump * 0.38),
        "armhole": (armhole, grown),
        "elbow": (bicep * rng.uniform(0.78, 0.84), rng.uniform(7.2, 9.5)),
        "wrist": (bicep * rng.uniform(0.52, 0.58), rng.uniform(2.6, 4.2)),
        "capLine": (armhole + ease, grown),
    }
    base = rng.randint(1, count - 2)
    sizes = [str(34 + 2 * i) for i in range(count)]
    return sizes, base, {name: [start + step * (i - 3) for i in range(count)] for name, (start, step) in lines.items()}


GRIDS = {"cm": [0.1, 0.2, 0.5], "mm": [1, 2, 5], "in": [Fraction(1, 16), Fraction(1, 8), Fraction(1, 4)]}
MM = {"cm": 10.0, "mm": 1.0, "in": 25.4}


def rounded(value, grid):
    steps = int(abs(value) / float(grid) + 0.5)
    return steps * float(grid) * (1 if value >= 0 else -1)


class Sheet:
    """One sheet: figures in its own unit on its own grid, and how the room writes it."""

    def __init__(self, seed, number):
        rng = self.rng = random.Random(seed)
        self.seed = seed
        self.language = list(WORDS)[number % 10]
        self.sizes, self.base, millimetres = grade(rng)
        self.unit = rng.choice(["cm", "cm", "mm", "in"]) if self.language in ("en",) else rng.choice(["cm", "cm", "cm", "mm"])
        if number % 13 == 5:
            self.unit = "in"
        self.grid = rng.choice(GRIDS[self.unit])
        known = WORDS[self.language]
        names = [n for n in known if n not in ("capLine",) or rng.random() < 0.5]
        rng.shuffle(names)
        if rng.random() < 0.3:
            names = [n for n in names if n == "bicep" or rng.random() < 0.7]
        if len(names) < 3:
            names = ["bicep", "length", "armhole"]
        self.names = {n: rng.choice(known[n]) for n in names}
        self.halves = {n for n in names if n in RIGHT} if number % 6 == 4 else set()
        self.layout = ["across", "down", "long", "steps", "from base", "unsigned", "one column", "across", "intervals", "down"][(number // 10 + number) % 10]
        self.delimiter = rng.choice([";", "\t", ","])
        self.comma = self.delimiter != "," and self.language != "en" and self.language != "ja"
        self.fractions = self.unit == "in" and rng.random() < 0.7
        self.encoding = rng.choice(["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", LEGACY.get(self.language, "cp1252")])
        self.declared = self.encoding in ("iso-8859-2", "cp1254", "shift_jis")
        self.unit_place = rng.choice(["title", "head", "column", "row"])
        self.quoted = rng.random() < 0.3
        self.titles = rng.random() < 0.6
        self.coded = rng.random() < 0.4
        self.toleranced = rng.random() < 0.4
        self.label = rng.choice(["{}", "{}", "Gr. {}" if self.language == "de" else "{}", "EU {}" if self.language == "en" else "{}"])
        self.line_end = rng.choice(["\n", "\r\n"])
        # Figures as they are written, in the unit of the sheet; a half width is rounded as a half.
        self.figures = {}
        for n in self.names:
            factor = 2 if n in self.halves else 1
            if self.layout in ("steps", "from base", "unsigned", "one column", "intervals"):
                start = rounded(millimetres[n][self.base] / MM[self.unit] / factor, self.grid)
                step = rounded((millimetres[n][1] - millimetres[n][0]) / MM[self.unit] / factor, min(self.grid, GRIDS[self.unit][0]))
                self.figures[n] = [start + step * (i - self.base) for i in range(len(self.sizes))]
            else:
                self.figures[n] = [rounded(v / MM[self.unit] / factor, self.grid) for v in millimetres[n]]
        self.extra = []
        self.unit_word = self.unit
        self.query = {"sizeTable": "women-en-13402-3-bust"}
        self.expected = []

    # How figures are written

    def text(self, value, signed=False):
        sign = "-" if value < -1e-9 else "+" if signed and value > 1e-9 else ""
        value = abs(float(value))
        if self.fractions:
            whole, rest = divmod(Fraction(round(value * 16), 16), 1)
            parts = ([str(whole)] if whole or not rest else []) + ([f"{rest.numerator}/{rest.denominator}"] if rest else [])
            return sign + " ".join(parts)
        written = f"{value:.4f}".rstrip("0").rstrip(".")
        return sign + (written.replace(".", ",") if self.comma else written)

    def name(self, n):
        word = self.names[n]
        return HALF[self.language].format(word) if n in self.halves else word

    def rows(self):
        head, size, step, tolerance, remarks = HEADS[self.language]
        labels = [self.label.format(s) for s in self.sizes]
        unit = f" ({self.unit_word})" if self.unit_place == "head" or self.layout in ("long",) else ""
        out = []
        if self.titles:
            out += [["Choir gown, shoulder overlay"], ["Date", "2026-03-02"], []]
        if self.unit_place == "title" or (self.unit_place in ("column", "row") and self.layout != "across"):
            out.append([{"en": "All measurements in {}", "de": "Alle Maße in {}", "fr": "Mesures en {}", "es": "Medidas en {}", "it": "Misure in {}", "pt": "Medidas em {}", "nl": "Maten in {}", "pl": "Wymiary w {}", "tr": "Ölçüler {}", "ja": "単位: {}"}[self.language].format(self.unit_word)])
        names = list(self.names)
        if self.layout == "across":
            code = ["Nr."] if self.coded else []
            column = [{"en": "Unit", "de": "Einheit"}.get(self.language, "Unit")] if self.unit_place == "column" else []
            tolerances = [tolerance] if self.toleranced else []
            if self.rng.random() < 0.25:
                out.append([""] * (len(code) + 1 + len(column) + len(tolerances)) + [size])
            out.append(code + [head + unit] + column + tolerances + labels + ([remarks] if self.coded else []))
            if self.unit_place == "row":
                out.append([""] * len(code) + [""] + [""] * len(tolerances) + [self.unit_word] * len(labels))
            for i, n in enumerate(names):
                out.append(
                    ([chr(65 + i)] if self.coded else [])
                    + [self.name(n)]
                    + ([self.unit_word] if column else [])
                    + ([self.text(GRIDS[self.unit][0])] if self.toleranced else [])
                    + self.cells(n)
                )
            for word, figures in self.extra:
                out.append(([""] if self.coded else []) + [word] + ([self.unit_word] if column else []) + ([""] if self.toleranced else []) + figures)
        elif self.layout == "down":
            out.append([size] + [self.name(n) + unit for n in names] + [word + unit for word, _ in self.extra])
            for i, label in enumerate(labels):
                out.append([label] + [self.cells(n)[i] for n in names] + [figures[i] for _, figures in self.extra])
        elif self.layout == "long":
            out.append(["style", size if self.language != "nl" else "size", head, "value" + unit])
            for i, label in enumerate(labels):
                for n in names:
                    out.append(["gown", label, self.name(n), self.cells(n)[i]])
                for word, figures in self.extra:
                    out.append(["gown", label, word, figures[i]])
        elif self.layout in ("steps", "from base", "unsigned"):
            out.append([head + unit] + labels)
            for n in names:
                values = self.figures[n]
                cells = []
                for i in range(len(labels)):
                    if i == self.base:
                        cells.append(self.text(values[i]))
                    elif self.layout == "from base":
                        cells.append(self.text(values[i] - values[self.base], True))
                    else:
                        step = values[i + 1] - values[i] if i < self.base else values[i] - values[i - 1]
                        cells.append(self.text(step) if self.layout == "unsigned" else self.text(-step if i < self.base else step, True))
                out.append([self.name(n)] + cells)
            for word, figures in self.extra:
                out.append([word] + figures)
        elif self.layout == "one column":
            out.append([{"en": "Sizes", "de": "Größen"}.get(self.language, "Sizes"), *labels])
            out.append([head + unit, labels[self.base], self.rng.choice([step, "+/-", step + " +/-"])])
            for n in names:
                out.append([self.name(n), self.text(self.figures[n][self.base]), self.rng.choice(["", "+", "±", "+/- "]) + self.text(self.figures[n][1] - self.figures[n][0])])
            for word, figures in self.extra:
                out.append([word, figures[0], self.text(1 * float(self.grid))])
        else:
            spans = [f"{self.sizes[i]}-{self.sizes[i + 1]}" for i in range(len(labels) - 1)]
            out.append([head + unit, labels[self.base]] + spans)
            for n in names:
                values = self.figures[n]
                out.append([self.name(n), self.text(values[self.base])] + [self.text(b - a) for a, b in zip(values, values[1:])])
            for word, figures in self.extra:
                out.append([word, figures[0]] + [self.text(float(self.grid))] * len(spans))
        return out

    def cells(self, n):
        return [v if isinstance(v, str) else self.text(v) for v in self.figures[n]]

    def body(self):
        lines = []
        for row in self.rows():
            cells = []
            for cell in row:
                if self.delimiter in cell or '"' in cell or (self.quoted and cell and not cell[0].isdigit()):
                    cell = '"' + cell.replace('"', '""') + '"'
                cells.append(cell)
            lines.append(self.delimiter.join(cells))
        text = self.line_end.join(lines) + self.line_end
        try:
            return text.encode(self.encoding)
        except UnicodeEncodeError:
            self.encoding, self.declared = "utf-8", False
            return text.encode("utf-8")

    def case(self, kind):
        body = self.body()
        truth = {}
        for n in self.names:
            factor = (2 if n in self.halves else 1) * MM[self.unit]
            truth[n] = {s: (None if isinstance(v, str) else round(v * factor, 4)) for s, v in zip(self.sizes, self.figures[n])}
        return {
            "id": f"{self.seed} {self.language} {self.layout} {self.unit} {float(self.grid)} {self.encoding} {kind}",
            "kind": kind,
            "coarse": float(self.grid) * MM[self.unit],
            "type": "text/csv" + (f"; charset={CODED[self.encoding]}" if self.declared else ""),
            "query": self.query,
            "body": base64.b64encode(body).decode(),
            "figures": truth,
            "labels": [self.label.format(s) for s in self.sizes],
            "sizes": self.sizes,
            "expected": self.expected,
        }


UNDECLARED = {"pl": ["cp1250", "iso-8859-2"], "tr": ["cp1254"], "ja": ["shift_jis", "euc_jp"], "en": ["utf-8"], "nl": ["utf-8"]}
TOTALS = {"en": ["Total", "Average"], "de": ["Summe", "Mittelwert"], "fr": ["Somme", "Moyenne"], "es": ["Total", "Promedio"], "it": ["Somma", "Media"], "pt": ["Soma", "Média"], "nl": ["Totaal", "Gemiddelde"], "pl": ["Suma", "Średnia"], "tr": ["Toplam", "Ortalama"], "ja": ["合計", "平均"]}
VULGAR = {"1/4": "\u00bc", "1/2": "\u00bd", "3/4": "\u00be", "1/8": "\u215b", "3/8": "\u215c", "5/8": "\u215d", "7/8": "\u215e"}


class Strange(Sheet):
    """A sheet with habits of its own: an encoding that nobody declares, totals, notes between the rows, a second row of sizes, columns from large to small, bars between the cells, other signs."""

    def __init__(self, seed, number):
        super().__init__(seed, number)
        rng = self.rng
        self.encoding = rng.choice(UNDECLARED.get(self.language, ["cp850", "mac_roman", "cp1252"]) + ["utf-8"])
        self.declared = False
        self.habit = ["totals", "region", "two regions", "notes", "large first", "bars", "merged", "signs", "shares"][number % 9]
        if self.habit == "totals":
            self.layout = "down"
        elif self.habit in ("region", "two regions", "large first", "merged"):
            self.layout = "across"
        elif self.habit == "signs" and self.layout in ("one column", "intervals"):
            self.layout = "from base"
        if self.habit == "bars":
            self.delimiter = "|"
        if self.habit in ("region", "two regions"):
            self.label = "{}"
            self.toleranced = False
        if self.layout not in ("across",) and self.unit_place in ("column", "row"):
            self.unit_place = "title"
        if self.layout in ("across", "down", "long"):
            _, _, millimetres = grade(random.Random(seed))
            for n in self.names:
                factor = 2 if n in self.halves else 1
                self.figures[n] = [rounded(v / MM[self.unit] / factor, self.grid) for v in millimetres[n]]

    def text(self, value, signed=False):
        text = super().text(value, signed)
        if self.habit == "signs":
            whole, _, fraction = text.rpartition(" ")
            text = whole + VULGAR[fraction] if fraction in VULGAR else text
            text = text.replace("-", "\u2212")
            if self.language == "ja":
                text = "".join(chr(ord(c) + 0xFEE0) if c.isdigit() or c == "." else c for c in text)
        return text

    def rows(self):
        out = super().rows()
        labels = [self.label.format(s) for s in self.sizes]
        at = next((k for k, row in enumerate(out) if labels[0] in row), None)
        if self.habit == "totals" and not self.fractions:
            columns = [[float(v) for v in self.figures[n]] for n in self.names]
            for word, share in zip(TOTALS[self.language], (1, len(self.sizes))):
                out.append([word] + [self.text(sum(c) / share) for c in columns])
        elif self.habit in ("region", "two regions"):
            first = out[at].index(labels[0])
            row = [""] * first + (["EU"] * len(labels) if self.habit == "region" else [str(8 + 2 * i) for i in range(len(labels))])
            if self.habit == "two regions":
                place = next(k for k, cell in enumerate(out[at][:first]) if cell and cell not in ("Nr.", "Unit", "Einheit"))
                row[place] = "UK"
                out[at][place] = "EU"
                if self.unit_place == "head":
                    out.insert(0, ["all in " + self.unit_word])
            out.insert(at, row)
        elif self.habit == "notes" and self.layout in ("across", "steps", "from base", "unsigned"):
            out.insert(len(out) - 1, ["see drawing 3, measured relaxed"])
            out.append(["12.10.2026 K. M."])
        elif self.habit == "large first":
            for k in range(at, len(out)):
                first = out[at].index(labels[0]) if k == at else first
                row = out[k]
                if len(row) >= first + len(labels):
                    row[first : first + len(labels)] = row[first : first + len(labels)][::-1]
        elif self.habit == "merged":
            for k, row in enumerate(out[at:]):
                row.insert(0, "Sleeve" if k == 1 else "")
        elif self.habit == "shares" and self.layout == "across":
            wide = out[at].index(labels[0])
            name = 1 if self.coded else 0
            out.append([""] * name + ["Shrinkage %"] + [""] * (wide - 1 - name) + ["2"] * len(labels))
        return out

    def case(self, kind):
        case = super().case(kind)
        case["id"] += " " + self.habit
        return case


def step_of(sheet):
    return max(float(sheet.grid), GRIDS[sheet.unit][0] if sheet.unit != "in" else 1 / 16)


PLAIN = ("across", "down", "long")


def fault(kind, seed, number):
    """A sheet with one fault of a kind, or nothing where its layout cannot have it. What is expected: any of the codes, the measure or the file, and sizes of which one must be named."""
    sheet = Sheet(seed, number)
    rng = sheet.rng
    n = rng.choice(list(sheet.names))
    count = len(sheet.sizes)
    if kind not in ("unknown row", "half not said", "wrong unit", "mapped row") and sheet.layout not in PLAIN:
        sheet.layout = rng.choice(PLAIN)
    row = sheet.figures[n]
    i = rng.randrange(count)
    grid = float(sheet.grid)

    def expect(codes, measures, sizes):
        sheet.expected = [{"codes": codes, "measures": measures, "sizes": sizes}]

    if kind == "slip":
        off = (2 * grid + rng.choice([4, 6, 9, 12]) / MM[sheet.unit]) * rng.choice([-1, 1])
        row[i] = rounded(row[i] + off, grid)
        expect(["uneven-jump", "sizes-swapped", "unit-mistake"], [n], [i])
    elif kind == "ten off":
        ten = {"cm": 10, "mm": 100, "in": 5}[sheet.unit]
        row[i] += ten if row[i] < 1.3 * ten else rng.choice([-1, 1]) * ten
        expect(["uneven-jump", "unit-mistake", "sizes-swapped"], [n], [i])
    elif kind == "digits exchanged":
        text = f"{row[i]:.1f}"
        places = [k for k in range(len(text) - 1) if text[k] != text[k + 1] and text[k].isdigit() and text[k + 1].isdigit()]
        if not places:
            return None
        k = rng.choice(places)
        changed = float(text[:k] + text[k + 1] + text[k] + text[k + 2 :])
        if abs(changed - row[i]) * MM[sheet.unit] < 2 * grid * MM[sheet.unit] + 4 or sheet.fractions or changed <= 0:
            return None
        row[i] = changed
        expect(["uneven-jump", "unit-mistake", "sizes-swapped"], [n], [i])
    elif kind == "point lost":
        row[i] *= 10
        expect(["unit-mistake"], [n], [i])
    elif kind == "other unit":
        row[i] = rounded(row[i] * (MM[sheet.unit] / 25.4 if sheet.unit != "in" else 2.54), 0.125)
        expect(["unit-mistake"], [n], [i])
    elif kind == "figure missing":
        row[i] = ""
        expect(["missing-size"], [n], [i])
    elif kind == "figures exchanged":
        j = i + 1 if i + 1 < count else i - 1
        if abs(row[i] - row[j]) < 2 * grid + 2 / MM[sheet.unit]:
            return None
        row[i], row[j] = row[j], row[i]
        expect(["sizes-swapped", "uneven-jump"], [n, "size"], [i, j])
    elif kind == "sizes exchanged":
        j = i + 1 if i + 1 < count else i - 1
        for values in sheet.figures.values():
            values[i], values[j] = values[j], values[i]
        expect(["sizes-swapped"], ["size", "bicep"], [i, j])
    elif kind == "size missing":
        i = rng.randrange(1, count - 1)
        for values in sheet.figures.values():
            del values[i]
        del sheet.sizes[i]
        expect(["missing-size"], ["size"], [i - 1, i])
    elif kind == "bicep hardly grows":
        start = sheet.figures["bicep"][sheet.base]
        factor = 2 if "bicep" in sheet.halves else 1
        sheet.figures["bicep"] = [rounded(start + (k - sheet.base) * 3.5 / MM[sheet.unit] / factor, grid) for k in range(count)]
        expect(["body-jump", "ease-loss"], ["bicep"], list(range(count)))
    elif kind == "bicep balloons":
        start = sheet.figures["bicep"][sheet.base]
        factor = 2 if "bicep" in sheet.halves else 1
        sheet.figures["bicep"] = [rounded(start + (k - sheet.base) * 30 / MM[sheet.unit] / factor, grid) for k in range(count)]
        expect(["body-jump"], ["bicep"], list(range(count)))
    elif kind == "ease drifts":
        if "capLine" not in sheet.names or "armhole" not in sheet.names:
            return None
        more = 9 / MM[sheet.unit]
        sheet.figures["armhole"] = [rounded(v + more * (k - sheet.base), grid) for k, v in enumerate(sheet.figures["armhole"])]
        expect(["cap-ease-drift", "cap-ease-range", "body-jump"], ["capEase", "armhole"], list(range(count)))
    elif kind == "cap stays flat":
        if "capHeight" not in sheet.names:
            return None
        start = sheet.figures["capHeight"][sheet.base]
        if sheet.base * 13 + 13 < 40 or grid * MM[sheet.unit] > 2:
            return None
        sheet.figures["capHeight"] = [rounded(start - (k - sheet.base) * 8 / MM[sheet.unit], grid) for k in range(count)]
        expect(["proportion-drift", "sizes-swapped"], ["capHeight", "size"], list(range(count)))
    elif kind == "unknown row":
        sheet.extra = [(rng.choice(UNKNOWN), [sheet.text(rounded((200 + 7 * k) / MM[sheet.unit], grid)) for k in range(count)])]
        expect(["not-read"], ["file"], [])
    elif kind == "mapped row":
        word = rng.choice(UNKNOWN)
        if n in sheet.halves:
            return None
        sheet.names[n] = word
        sheet.query["mapping"] = json.dumps({word: n}, ensure_ascii=False)
        expect([], [], [])
    elif kind == "half not said":
        if sheet.layout not in PLAIN or sheet.halves or "length" not in sheet.names or sheet.unit == "in":
            return None
        for each in RIGHT:
            if each in sheet.figures:
                sheet.figures[each] = [rounded(v / 2, grid) for v in sheet.figures[each]]
        expect(["open-question"], ["bicep"], [])
    elif kind == "wrong unit":
        if sheet.layout not in PLAIN or sheet.halves:
            return None
        sheet.unit_word = {"in": "cm", "cm": "in", "mm": "cm"}[sheet.unit]
        if sheet.unit_place == "nowhere":
            return None
        expect(["open-question"], ["file", "bicep"], [])
    return sheet.case(kind)


KINDS = ["slip", "ten off", "digits exchanged", "point lost", "other unit", "figure missing", "figures exchanged", "sizes exchanged", "size missing", "bicep hardly grows", "bicep balloons", "ease drifts", "cap stays flat", "unknown row", "mapped row", "half not said", "wrong unit"]


def main():
    every = int(sys.argv[1]) if len(sys.argv) > 1 else 1
    cases = [Sheet(1000 + k, k).case("clean") for k in range(200)]
    cases += [Strange(3000 + k, k + k // 10).case("clean") for k in range(180)]
    for k in range(680):
        case = next(filter(None, (fault(KINDS[k % len(KINDS)], 5000 + k + 1000 * t, k + 11 * t) for t in range(40))), None)
        if case:
            cases.append(case)
    for case in cases[::every]:
        sys.stdout.write(json.dumps(case, ensure_ascii=True) + "\n")


main()
