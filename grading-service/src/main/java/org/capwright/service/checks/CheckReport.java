package org.capwright.service.checks;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.check.BodyReference;
import org.capwright.check.Cause;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.Finding;
import org.capwright.check.GradeChecks;
import org.capwright.check.Severity;
import org.capwright.check.Thresholds;
import org.capwright.check.WhatIf;
import org.capwright.exchange.table.CsvText;
import org.capwright.gradeimport.ForeignGrade;
import org.capwright.gradeimport.Unread;
import org.capwright.quantity.Decimals;
import org.capwright.quantity.FileBytes;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;
import org.capwright.report.GradeReport;
import org.capwright.service.sizerun.FindingAnswer;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** Writes what was found. */
final class CheckReport {

    private static final int DECIMALS = 6;

    private CheckReport() {}

    static CheckAnswer answer(GradeUnderCheck order) {
        CheckedGrade grade = order.grade();
        Optional<WhatIf.Proposal> whatIf = order.whatIf();
        return new CheckAnswer(
                order.name(),
                order.unit().symbol(),
                grade.sizes().stream().map(size -> size.label()).toList(),
                grade.baseSize().label(),
                grade.body().map(body -> body.table().id()),
                grade.body().map(body -> body.table().info().source()),
                summary(order.findings()),
                FindingAnswer.of(order.findings(), order.unit(), order.language()),
                causes(order, whatIf),
                jumps(grade, order.thresholds(), order.unit()),
                whatIf.map(proposal -> WhatIfAnswer.of(proposal, order.unit(), order.language())),
                order.coverage().map(covered -> CoverageAnswer.of(covered, order.unit())),
                order.traces().stream()
                        .map(trace -> new CheckAnswer.TraceAnswer(
                                word(trace.kind()),
                                trace.file(),
                                trace.line(),
                                trace.subject(),
                                trace.words().in(order.language())))
                        .toList(),
                order.read().map(read -> figures(read, order.unit())).orElse(List.of()),
                order.read().map(read -> unread(read, order.language())).orElse(List.of()));
    }

    private static List<CheckAnswer.FiguresAnswer> figures(ForeignGrade read, Unit unit) {
        List<CheckAnswer.FiguresAnswer> rows = new ArrayList<>();
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            if (read.read().stream().anyMatch(size -> size.value(measure).isPresent())) {
                rows.add(new CheckAnswer.FiguresAnswer(
                        measure.code(),
                        read.read().stream()
                                .map(size -> size.value(measure))
                                .map(value -> value.isEmpty()
                                        ? Optional.<Double>empty()
                                        : Optional.of(
                                                measure.quantity() == Quantity.LENGTH
                                                        ? shown(value.getAsDouble(), unit)
                                                        : value.getAsDouble()))
                                .toList()));
            }
        }
        return rows;
    }

    private static List<CheckAnswer.UnreadAnswer> unread(ForeignGrade read, Language language) {
        return read.unread().stream()
                .map(row -> new CheckAnswer.UnreadAnswer(
                        row.line(),
                        row.name(),
                        row.proposals().stream()
                                .map(each -> new CheckAnswer.ProposalAnswer(
                                        each.measure().code(), each.why().in(language)))
                                .toList()))
                .toList();
    }

    private static List<CheckAnswer.CauseAnswer> causes(GradeUnderCheck order, Optional<WhatIf.Proposal> whatIf) {
        return Cause.of(order.cures(whatIf), order.findings()).stream()
                .filter(cause -> cause.cure().isPresent())
                .map(cause -> new CheckAnswer.CauseAnswer(
                        cause.words().in(order.language()),
                        WhatIfAnswer.CureAnswer.of(cause.cure().orElseThrow(), order.unit()),
                        cause.findings().stream().map(order.findings()::indexOf).toList()))
                .toList();
    }

    private static CheckAnswer.SummaryAnswer summary(List<Finding> findings) {
        int stop = count(findings, Severity.STOP);
        int caution = count(findings, Severity.CAUTION);
        int info = count(findings, Severity.INFO);
        boolean partly = findings.stream().anyMatch(Unread::is);
        String verdict = partly ? "not judged" : stop > 0 ? "stop" : caution > 0 ? "caution" : "pass";
        String gravest = stop > 0 ? "stop" : caution > 0 ? "caution" : info > 0 ? "info" : "none";
        return new CheckAnswer.SummaryAnswer(verdict, gravest, stop, caution, info);
    }

    private static int count(List<Finding> findings, Severity severity) {
        return (int) findings.stream()
                .filter(finding -> finding.severity() == severity)
                .count();
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static List<CheckAnswer.JumpAnswer> jumps(CheckedGrade grade, Thresholds thresholds, Unit unit) {
        List<CheckAnswer.JumpAnswer> jumps = new ArrayList<>();
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            for (int i = 0; measure.body().isPresent() && i < grade.intervals(); i++) {
                OptionalDouble garment = grade.jump(i, measure);
                if (garment.isPresent()) {
                    Optional<Interval> passing = GradeChecks.passing(grade, measure, i, thresholds);
                    jumps.add(jump(grade, measure, i, garment.getAsDouble(), passing, unit));
                }
            }
        }
        return jumps;
    }

    private static CheckAnswer.JumpAnswer jump(
            CheckedGrade grade,
            CheckedMeasure measure,
            int interval,
            double garment,
            Optional<Interval> passing,
            Unit unit) {
        String from = grade.label(interval);
        String to = grade.label(interval + 1);
        Optional<BodyDimension> dimension = grade.body().flatMap(body -> body.counterpart(measure));
        Optional<Double> body = Optional.empty();
        if (grade.body().isPresent() && dimension.isPresent()) {
            BodyReference reference = grade.body().get();
            OptionalDouble growth = reference.jump(from, to, dimension.get());
            body = growth.isPresent() ? Optional.of(shown(growth.getAsDouble(), unit)) : Optional.empty();
        }
        return new CheckAnswer.JumpAnswer(
                measure.code(),
                from,
                to,
                shown(garment, unit),
                dimension.map(BodyDimension::id),
                body,
                passing.map(range -> shown(range.lower(), unit)),
                passing.map(range -> shown(range.upper(), unit)));
    }

    private static double shown(double millimetres, Unit unit) {
        return unit.figure(millimetres);
    }

    static byte[] pdf(GradeUnderCheck order) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Optional<WhatIf.Proposal> whatIf = order.whatIf();
        new GradeReport(
                        order.name(),
                        order.unit(),
                        order.language(),
                        order.grade(),
                        order.findings(),
                        order.cures(whatIf),
                        whatIf,
                        order.coverage())
                .write(out);
        return out.toByteArray();
    }

    /** RFC 4180: a header line, then one line per finding. */
    static byte[] csv(GradeUnderCheck order) {
        FileBytes out = new FileBytes();
        out.put("style,check,severity,from size,to"
                + " size,measure,value,least,greatest,unit,message,remedy,source,cause\r\n");
        for (Cause cause : Cause.of(order.cures(order.whatIf()), order.findings())) {
            lines(out, order, cause);
        }
        return out.all();
    }

    /** The findings of one cause, each with what is behind it. */
    private static void lines(FileBytes out, GradeUnderCheck order, Cause cause) {
        for (FindingAnswer finding : FindingAnswer.of(cause.findings(), order.unit(), order.language())) {
            List<String> sizes = finding.sizes();
            CsvText.field(out, order.name());
            CsvText.next(out, finding.check());
            CsvText.next(out, finding.severity());
            CsvText.next(out, sizes.isEmpty() ? "" : sizes.get(0));
            CsvText.next(out, sizes.isEmpty() ? "" : sizes.get(sizes.size() - 1));
            CsvText.next(out, finding.dimension());
            out.put(',');
            out.text(figure(finding.value()));
            out.put(',');
            out.text(figure(finding.least()));
            out.put(',');
            out.text(figure(finding.greatest()));
            CsvText.next(out, finding.unit().orElse(""));
            CsvText.next(out, finding.message());
            CsvText.next(out, finding.remedy());
            CsvText.next(out, finding.source());
            CsvText.next(out, cured(cause, order));
            out.put("\r\n");
        }
    }

    private static String cured(Cause cause, GradeUnderCheck order) {
        return cause.cure()
                .map(cure -> Text.of("{cause} It is {before}; {after} mends it.")
                        .with("cause", cause.words())
                        .with("before", length(cure.before(), order.unit()))
                        .with("after", length(cure.after(), order.unit()))
                        .in(order.language()))
                .orElse("");
    }

    private static Text length(double millimetres, Unit unit) {
        return Text.figures(unit.format(millimetres) + " " + unit.symbol());
    }

    private static String figure(Optional<Double> figure) {
        return figure.map(known -> Decimals.text(known, DECIMALS)).orElse("");
    }
}
