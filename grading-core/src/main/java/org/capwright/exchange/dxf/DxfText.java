package org.capwright.exchange.dxf;

import java.util.Locale;
import java.util.Set;

/** Words as a DXF R12 file can hold them. */
final class DxfText {

    /** Strings of R12 hold up to 256 characters; the reference says 255 for some fields. */
    static final int LONGEST_STRING = 255;

    /** Names of layers and blocks hold up to 31 characters. */
    static final int LONGEST_NAME = 31;

    private static final String CUT_OFF = "...";
    private static final String HEX = "0123456789ABCDEF";

    private DxfText() {}

    /**
     * Writes text in 7-bit ASCII. Letters outside it become {@code \U+XXXX}, and so do the signs that readers take for the beginning of a code
     * ({@code \}, {@code ^}, and a per cent sign after another). Control characters become spaces; what four hexadecimal digits cannot tell becomes U+FFFD.
     * Text too long for a string is cut off and ends with three dots.
     */
    static String escaped(String text) {
        StringBuilder out = new StringBuilder(text.length());
        int fits = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < 0x20 || c == 0x7f) {
                out.append(' ');
            } else if (c > 0x7f || c == '\\' || c == '^' || c == '%' && i > 0 && text.charAt(i - 1) == '%') {
                if (Character.isHighSurrogate(c)
                        && i + 1 < text.length()
                        && Character.isLowSurrogate(text.charAt(i + 1))) {
                    i++;
                }
                escape(out, Character.isSurrogate(c) ? '\ufffd' : c);
            } else {
                out.append(c);
            }
            if (out.length() <= LONGEST_STRING - CUT_OFF.length()) {
                fits = out.length();
            } else if (out.length() > LONGEST_STRING) {
                out.setLength(fits);
                return out.append(CUT_OFF).toString();
            }
        }
        return out.toString();
    }

    private static void escape(StringBuilder out, char c) {
        out.append("\\U+");
        for (int shift = 12; shift >= 0; shift -= 4) {
            out.append(HEX.charAt(c >> shift & 15));
        }
    }

    /**
     * Makes a name of a layer or a block: A-Z, 0-9, {@code $}, {@code _} and {@code -} alone, at most 31 characters, and none that is taken already.
     *
     * @param wanted any text
     * @param taken names in use; the new one is added
     */
    static String name(String wanted, Set<String> taken) {
        StringBuilder clean = new StringBuilder(wanted.length());
        String upper = wanted.toUpperCase(Locale.ROOT);
        for (int i = 0; i < upper.length() && clean.length() < LONGEST_NAME; i++) {
            char c = upper.charAt(i);
            clean.append(c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '$' || c == '-' ? c : '_');
        }
        String name = clean.isEmpty() ? "_" : clean.toString();
        for (int i = 2; !taken.add(name); i++) {
            String ending = "$" + i;
            name = clean.substring(0, Math.min(clean.length(), LONGEST_NAME - ending.length())) + ending;
        }
        return name;
    }
}
