package org.capwright.tables.survey;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Computes the small statistics file from the per-person rows and prints it. */
public final class SurveyProgram {

    private SurveyProgram() {}

    /**
     * Prints the statistics file to standard output, in UTF-8 with line feeds.
     *
     * @param arguments none are read
     */
    public static void main(String[] arguments) {
        PrintStream out = new PrintStream(System.out, false, StandardCharsets.UTF_8);
        out.print(statistics());
        out.flush();
    }

    static String statistics() {
        StringBuilder csv = new StringBuilder();
        csv.append("# Sums over the per-person rows beside this file, in mm and mm2; written by SurveyProgram.\n");
        csv.append("survey,statistic,first,second,value\n");
        for (Survey survey : Survey.values()) {
            csv.append(SufficientStatistics.of(People.of(survey)).toCsv(survey));
        }
        return csv.toString();
    }
}
