package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Pattern;

/** Cuts a DXF file into records and checks what can be seen line by line. */
final class DxfLexer {

    private static final Pattern FIXED_POINT = Pattern.compile(" *-?\\d{1,15}(\\.\\d{0,18})? *");
    private static final Pattern WHOLE = Pattern.compile(" *-?\\d{1,9} *");

    private final byte[] file;
    private final Consumer<DxfFinding> findings;
    private int next;
    private int line;

    DxfLexer(byte[] file, Consumer<DxfFinding> findings) {
        this.file = file;
        this.findings = findings;
    }

    List<DxfRecord> records() {
        List<DxfRecord> records = new ArrayList<>();
        while (next < file.length) {
            String codeLine = line();
            if (next >= file.length) {
                report(DxfFault.TRUNCATED, "a group code without a value");
                break;
            }
            int code = code(codeLine);
            String value = line();
            if (code < 0) {
                continue;
            }
            if (code == 0) {
                records.add(DxfRecord.at(line, value));
            } else if (records.isEmpty()) {
                if (code != 999) {
                    report(DxfFault.SECTION_ORDER, "a value before the first section");
                }
            } else {
                check(code, value);
                records.get(records.size() - 1).pairs().add(new DxfRecord.Pair(line, code, value));
            }
        }
        return records;
    }

    private void report(DxfFault fault, String detail) {
        findings.accept(new DxfFinding(line, fault, detail));
    }

    private String line() {
        line++;
        int end = next;
        while (end < file.length && file[end] != '\n') {
            end++;
        }
        boolean ended = end < file.length;
        int last = ended && end > next && file[end - 1] == '\r' ? end - 1 : end;
        if (!ended || last == end) {
            report(DxfFault.LINE_ENDING, ended ? "LF alone" : "the last line is not ended");
        }
        StringBuilder text = new StringBuilder(last - next);
        int strange = -1;
        for (int i = next; i < last; i++) {
            if (file[i] < 0x20 || file[i] == 0x7f) {
                strange = file[i] & 0xff;
            }
            text.append((char) (file[i] & 0xff));
        }
        if (strange >= 0) {
            report(DxfFault.NOT_ASCII, "byte " + strange);
        }
        next = ended ? end + 1 : end;
        return text.toString();
    }

    private int code(String text) {
        String digits = text.strip();
        if (digits.isEmpty() || digits.length() > 4 || !digits.chars().allMatch(c -> c >= '0' && c <= '9')) {
            report(DxfFault.GROUP_CODE, shown(text));
            return -1;
        }
        return Integer.parseInt(digits);
    }

    private void check(int code, String value) {
        if (code >= 10 && code < 60
                || code >= 140 && code < 148
                || code >= 210 && code < 240
                || code >= 1010 && code < 1060) {
            if (!FIXED_POINT.matcher(value).matches()) {
                report(DxfFault.NUMBER, shown(value));
            }
        } else if (code >= 60 && code < 80 || code >= 170 && code < 176 || code >= 1060 && code < 1080) {
            if (!WHOLE.matcher(value).matches()) {
                report(DxfFault.WHOLE_NUMBER, shown(value));
            }
        } else if (value.length() > DxfText.LONGEST_STRING) {
            report(DxfFault.LONG_STRING, value.length() + " characters");
        }
        if (code >= 80 && code < 140
                || code >= 148 && code < 170
                || code >= 176 && code < 210
                || code >= 240 && code < 999) {
            report(DxfFault.NEWER_GROUP_CODE, Integer.toString(code));
        }
    }

    static String shown(String value) {
        return value.length() > 40 ? value.substring(0, 40) + "..." : value;
    }
}
