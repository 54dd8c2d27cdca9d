package org.capwright.drawing;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.Map;

/**
 * Gives Arabic letters the form that joins them to their neighbours: the presentation forms of Unicode, blocks A and B, whose compatibility decompositions and
 * names say which letter and which form each one is (The Unicode Standard, section 9.2).
 */
final class ArabicJoining {

    private static final int ISOLATED = 0;
    private static final int FINAL = 1;
    private static final int INITIAL = 2;
    private static final int MEDIAL = 3;
    private static final String[] NAMES = {" ISOLATED FORM", " FINAL FORM", " INITIAL FORM", " MEDIAL FORM"};

    private static final Map<String, char[]> FORMS = forms();

    private ArabicJoining() {}

    private static Map<String, char[]> forms() {
        Map<String, char[]> forms = new HashMap<>();
        for (char c = 0xFB50; c <= 0xFEFC; c++) {
            String known = Character.getName(c);
            String name = known == null ? "" : known;
            boolean letter = name.startsWith("ARABIC LE") && (c < 0xFBD3 || c >= 0xFE80);
            boolean lamAlef = c >= 0xFEF5 && name.startsWith("ARABIC LIGATURE LAM WITH ALEF");
            if (letter && !name.startsWith("ARABIC LETTER UIGHUR") || lamAlef) {
                String plain = Normalizer.normalize(String.valueOf(c), Normalizer.Form.NFKC);
                for (int form = ISOLATED; form <= MEDIAL; form++) {
                    if (name.endsWith(NAMES[form])) {
                        forms.computeIfAbsent(plain, key -> new char[4])[form] = c;
                    }
                }
            }
        }
        return forms;
    }

    static String joined(String text) {
        StringBuilder out = new StringBuilder(text.length());
        boolean before = false; // whether the letter before reaches out to the left
        for (int i = 0; i < text.length(); ) {
            String letter = text.substring(i, Math.min(i + 2, text.length()));
            if (!FORMS.containsKey(letter)) {
                letter = text.substring(i, i + 1);
            }
            char[] forms = FORMS.get(letter);
            i += letter.length();
            boolean mark = Character.getType(letter.charAt(0)) == Character.NON_SPACING_MARK;
            if (forms == null) {
                out.append(letter);
                before = mark && before;
                continue;
            }
            boolean reaches = forms[INITIAL] != 0 && takesJoin(text, i);
            int form = before && forms[FINAL] != 0 ? (reaches ? MEDIAL : FINAL) : (reaches ? INITIAL : ISOLATED);
            out.append(forms[form] == 0 ? letter : String.valueOf(forms[form]));
            before = reaches;
        }
        return out.toString();
    }

    private static boolean takesJoin(String text, int from) {
        int i = from;
        while (i < text.length() && Character.getType(text.charAt(i)) == Character.NON_SPACING_MARK) {
            i++;
        }
        if (i >= text.length()) {
            return false;
        }
        char[] next = FORMS.get(text.substring(i, i + 1));
        return next != null && next[FINAL] != 0;
    }
}
