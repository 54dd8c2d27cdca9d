package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.capwright.pattern.NestWords;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** All sizes stand where one did, and nowhere else. */
class NestWordsTest {

    private static List<Piece> nest(PatternSet set) {
        return set.sizes().stream().map(pieces -> pieces.get(0)).toList();
    }

    @ParameterizedTest
    @CsvSource({"6,16,26,6–26", "36,38,40,36–40", "s,m,l,s–l", "½,1,1½,½–1½", "size,large,larger,size–larger"})
    void sizesStandWhereOneDid(String first, String second, String third, String all) {
        List<Piece> nest = nest(ChoirGown.inSizes("Gown " + first + first + " " + first + "A", first, second, third));
        List<String> wanted = nest.get(0).label().lines().stream()
                .map(line -> line.matches("(.*, )?size\\h" + first)
                        ? line.substring(0, line.length() - first.length()) + all
                        : line)
                .toList();
        assertTrue(wanted.stream().anyMatch(line -> line.endsWith(all)), wanted.toString());
        assertEquals(wanted, NestWords.of(nest, 0));
    }
}
