package org.capwright.service.words;

import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.CaseTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ConditionalExpressionTree;
import com.sun.source.tree.ExpressionStatementTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.SwitchExpressionTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** The texts that are written in the sources of all modules, as the compiler reads them. */
final class WrittenTexts {

    /** Methods that take texts among other things, whoever they are called on. */
    private static final Set<String> TAKING_METHODS =
            Set.of("refuse", "need", "check", "assumed", "leftOut", "notRead", "refused", "wrong", "unknown");

    /** Classes whose methods and constructors take texts among other things. */
    private static final Set<String> TAKING =
            Set.of("Violation", "Finding", "Problem", "FieldViolation", "WrongParameter", "ProblemException");

    /** Words for people, as against a code, the name of a field or a figure. */
    private static final Pattern WORDS = Pattern.compile("(?s)(?!/).*[A-Za-z]{3,}.* .*|.* [A-Za-z]{3,}.*");

    /** What has letters outside its parts. */
    private static final Pattern LETTERS = Pattern.compile("(?s).*\\p{L}.*");

    /** All constants, each with a place where it stands. */
    final Map<String, String> constants = new TreeMap<>();

    /** Those that are handed to somebody who says them. */
    final Map<String, String> said = new TreeMap<>();

    /** What is put together and handed over all the same: no catalogue can have it. */
    final Map<String, String> composed = new TreeMap<>();

    private WrittenTexts() {}

    static WrittenTexts read() throws IOException {
        WrittenTexts texts = new WrittenTexts();
        List<Path> files = new ArrayList<>();
        for (String module : List.of("size-tables", "grading-core", "grading-json", "grading-service")) {
            try (Stream<Path> all = Files.walk(Path.of("..", module, "src/main/java"))) {
                all.filter(file -> file.toString().endsWith(".java")).forEach(files::add);
            }
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, null)) {
            JavacTask task = (JavacTask)
                    compiler.getTask(null, manager, null, null, null, manager.getJavaFileObjectsFromPaths(files));
            for (CompilationUnitTree unit : task.parse()) {
                unit.accept(texts.new Scanner(unit.getSourceFile().getName()), null);
            }
        }
        return texts;
    }

    private final class Scanner extends TreeScanner<Void, Void> {

        private final String place;

        Scanner(String file) {
            place = file.substring(file.lastIndexOf('/') + 1);
        }

        @Override
        public Void visitMethodInvocation(MethodInvocationTree call, Void none) {
            if (call.getMethodSelect() instanceof MemberSelectTree select) {
                String name = select.getIdentifier().toString();
                String on = select.getExpression() instanceof IdentifierTree type
                        ? type.getName().toString()
                        : "";
                if (name.equals("say") || on.equals("Text") && name.equals("of")) {
                    call.getArguments().forEach(argument -> take(argument, LETTERS));
                } else if (TAKING.contains(on)
                        || TAKING_METHODS.contains(name)
                        || name.equals("add") && on.equals("found")) {
                    call.getArguments().forEach(argument -> take(argument, WORDS));
                }
            } else if (call.getMethodSelect() instanceof IdentifierTree name
                    && TAKING_METHODS.contains(name.getName().toString())) {
                call.getArguments().forEach(argument -> take(argument, WORDS));
            }
            return super.visitMethodInvocation(call, none);
        }

        @Override
        public Void visitNewClass(NewClassTree made, Void none) {
            if (TAKING.contains(made.getIdentifier().toString())) {
                made.getArguments().forEach(argument -> take(argument, WORDS));
            }
            return super.visitNewClass(made, none);
        }

        private void take(ExpressionTree argument, Pattern taken) {
            List<String> folded = new ArrayList<>();
            boolean whole = fold(argument, folded);
            folded.removeIf(text -> !taken.matcher(text).matches());
            if (whole) {
                folded.forEach(text -> said.putIfAbsent(text, place));
            } else if (!folded.isEmpty()) {
                composed.putIfAbsent(argument.toString(), place);
            }
        }

        /** The constants that an expression may be; false if it is made of more than these. */
        private boolean fold(Tree tree, List<String> into) {
            if (tree instanceof LiteralTree literal) {
                if (literal.getValue() instanceof String text) {
                    into.add(text);
                }
                return literal.getValue() instanceof String;
            }
            if (tree instanceof ParenthesizedTree inner) {
                return fold(inner.getExpression(), into);
            }
            if (tree instanceof ConditionalExpressionTree either) {
                boolean first = fold(either.getTrueExpression(), into);
                return fold(either.getFalseExpression(), into) && first;
            }
            if (tree instanceof SwitchExpressionTree cases) {
                boolean all = true;
                for (CaseTree each : cases.getCases()) {
                    all &= each.getBody() != null && fold(each.getBody(), into);
                }
                return all;
            }
            if (tree instanceof ExpressionStatementTree statement) {
                return fold(statement.getExpression(), into);
            }
            if (tree instanceof BinaryTree sum && sum.getKind() == Tree.Kind.PLUS) {
                Optional<String> text = constant(sum);
                if (text.isPresent()) {
                    into.add(text.get());
                    return true;
                }
                List<String> parts = new ArrayList<>();
                fold(sum.getLeftOperand(), parts);
                fold(sum.getRightOperand(), parts);
                into.addAll(parts);
                return false;
            }
            return false;
        }

        private Optional<String> constant(Tree tree) {
            if (tree instanceof LiteralTree literal && literal.getValue() instanceof String text) {
                return Optional.of(text);
            }
            if (tree instanceof ParenthesizedTree inner) {
                return constant(inner.getExpression());
            }
            if (tree instanceof BinaryTree sum && sum.getKind() == Tree.Kind.PLUS) {
                Optional<String> left = constant(sum.getLeftOperand());
                Optional<String> right = constant(sum.getRightOperand());
                return left.isPresent() && right.isPresent() ? Optional.of(left.get() + right.get()) : Optional.empty();
            }
            return Optional.empty();
        }

        @Override
        public Void visitBinary(BinaryTree sum, Void none) {
            Optional<String> text = constant(sum);
            if (text.isPresent()) {
                constants.putIfAbsent(text.get(), place);
                return null;
            }
            return super.visitBinary(sum, none);
        }

        @Override
        public Void visitLiteral(LiteralTree literal, Void none) {
            if (literal.getValue() instanceof String text) {
                constants.putIfAbsent(text, place);
            }
            return null;
        }
    }
}
