package org.capwright.exchange.dxf;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;

/** Checks the order and the references of the records of a DXF file. */
final class DxfStructure {

    private static final List<String> SECTIONS = List.of("HEADER", "TABLES", "BLOCKS", "ENTITIES");

    /** The order of tables that matters: a layer names line types, a view or a dimension style may name both. */
    private static final List<String> TABLES = List.of("LTYPE", "LAYER", "STYLE");

    private final Consumer<DxfFinding> findings;
    private final Map<String, Set<String>> defined = new HashMap<>();
    private final DxfEntities entities;
    private String section = "";
    private String table = "";
    private int lastSection = -1;
    private int lastTable = -1;
    private int lastLine;

    DxfStructure(Consumer<DxfFinding> findings) {
        this.findings = findings;
        this.entities = new DxfEntities(this);
    }

    void report(DxfFinding finding) {
        findings.accept(finding);
    }

    void report(int line, DxfFault fault, String detail) {
        findings.accept(new DxfFinding(line, fault, detail));
    }

    boolean isDefined(String kind, String name) {
        return defined.getOrDefault(kind, Set.of()).contains(name);
    }

    void define(String kind, String name, int line) {
        if (name.length() > DxfText.LONGEST_NAME || !name.matches("[A-Z0-9$_-]+")) {
            report(line, DxfFault.NAME, DxfLexer.shown(name));
        }
        if (!defined.computeIfAbsent(kind, k -> new HashSet<>()).add(name)) {
            report(line, DxfFault.DUPLICATE_NAME, kind + " " + DxfLexer.shown(name));
        }
    }

    void check(List<DxfRecord> records) {
        boolean ended = false;
        for (DxfRecord record : records) {
            lastLine = record.line();
            if (ended) {
                report(record.line(), DxfFault.AFTER_END, record.type());
                break;
            }
            switch (record.type()) {
                case "SECTION" -> section(record);
                case "ENDSEC" -> endSection(record);
                case "EOF" -> ended = true;
                default -> inSection(record);
            }
        }
        if (!section.isEmpty()) {
            report(lastLine, DxfFault.SECTION_ORDER, section + " is not ended");
        }
        if (!ended) {
            report(lastLine, DxfFault.TRUNCATED, "no EOF");
        }
        if (lastSection < SECTIONS.indexOf("ENTITIES")) {
            report(lastLine, DxfFault.SECTION_ORDER, "no section ENTITIES");
        }
        entities.finish();
        checkLayerLineTypes(records);
    }

    private void section(DxfRecord record) {
        String name = record.text(2);
        int place = SECTIONS.indexOf(name);
        if (!section.isEmpty()) {
            report(record.line(), DxfFault.SECTION_ORDER, section + " is not ended");
        }
        if (place <= lastSection) {
            report(record.line(), DxfFault.SECTION_ORDER, DxfLexer.shown(name));
        }
        lastSection = Math.max(place, lastSection);
        section = name;
        if (name.equals("HEADER")) {
            header(record);
        }
    }

    private void header(DxfRecord record) {
        String variable = "";
        boolean version = false;
        for (DxfRecord.Pair pair : record.pairs()) {
            if (pair.code() == 9) {
                variable = pair.value();
            } else if (variable.equals("$ACADVER") && pair.code() == 1) {
                version = pair.value().equals("AC1009");
            } else {
                entities.headerValue(variable, pair);
            }
        }
        if (!version) {
            report(record.line(), DxfFault.VERSION, "not AC1009");
        }
    }

    private void endSection(DxfRecord record) {
        if (section.isEmpty()) {
            report(record.line(), DxfFault.SECTION_ORDER, "ENDSEC without a section");
        }
        if (!table.isEmpty()) {
            report(record.line(), DxfFault.SECTION_ORDER, "table " + table + " is not ended");
        }
        entities.endSequence(record.line());
        section = "";
        table = "";
    }

    private void inSection(DxfRecord record) {
        switch (section) {
            case "TABLES" -> inTables(record);
            case "BLOCKS", "ENTITIES" -> entities.record(record);
            default -> report(record.line(), DxfFault.SECTION_ORDER, DxfLexer.shown(record.type()));
        }
    }

    private void inTables(DxfRecord record) {
        if (record.type().equals("TABLE")) {
            table = record.text(2);
            int place = TABLES.indexOf(table);
            if (place >= 0 && place < lastTable) {
                report(record.line(), DxfFault.TABLE_ORDER, table);
            }
            lastTable = Math.max(place, lastTable);
        } else if (record.type().equals("ENDTAB")) {
            table = "";
        } else if (record.type().equals(table)) {
            define(table, record.text(2), record.line());
        } else {
            report(record.line(), DxfFault.SECTION_ORDER, record.type() + " outside its table");
        }
    }

    private void checkLayerLineTypes(List<DxfRecord> records) {
        for (DxfRecord record : records) {
            if (record.type().equals("LAYER")) {
                String lineType = record.text(6);
                if (!isDefined("LTYPE", lineType)) {
                    report(record.line(), DxfFault.UNDEFINED_LINE_TYPE, DxfLexer.shown(lineType));
                }
            }
        }
    }
}
