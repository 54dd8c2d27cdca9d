package org.capwright.batch;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.TreeMap;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FSDataInputStream;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import tools.jackson.databind.json.JsonMapper;

/**
 * The job: reads orders, cuts each, and writes {@code orders} (a Parquet table with a row for each file), {@code errors} (JSON by line, one for each order that is not cut) and {@code summary.json}. Each order is cut once, on
 * the machine that read it; nothing is shuffled. What was there before is replaced when all is written, so that a job that fails or is run again leaves one whole result.
 */
public final class CutBatch {

    private static final String ORDERS = "orders";
    private static final String ERRORS = "errors";
    private static final String SUMMARY = "summary.json";
    private static final String OUTCOME = "outcome";
    private static final String CUT = "cut";
    private static final String NOT_CUT = "not-cut";

    /** Row groups of Parquet are kept in memory until they are as large as this. */
    private static final int ROW_GROUP = 32 << 20;

    private static final StructType TABLE = new StructType()
            .add("input", DataTypes.StringType)
            .add("line", DataTypes.LongType)
            .add("reference", DataTypes.StringType)
            .add("style", DataTypes.StringType)
            .add("format", DataTypes.StringType)
            .add("sha256", DataTypes.StringType)
            .add("bytes", DataTypes.IntegerType)
            .add("content", DataTypes.BinaryType)
            .add("problem", DataTypes.StringType)
            .add(OUTCOME, DataTypes.StringType);

    private final SparkSession spark;
    private final JavaSparkContext context;
    private final Configuration files;

    private CutBatch(SparkSession spark) {
        this.spark = spark;
        this.context = new JavaSparkContext(spark.sparkContext());
        this.files = context.hadoopConfiguration();
    }

    /**
     * Runs the job by {@code spark-submit}.
     *
     * @param arguments see {@code docs/batch.md}
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] arguments) throws IOException {
        BatchArguments said = BatchArguments.of(arguments);
        try (SparkSession spark =
                SparkSession.builder().appName("capwright-batch").getOrCreate()) {
            System.out.print(run(spark, said).json());
        }
    }

    /**
     * Runs the job in a session.
     *
     * @param spark the session
     * @param said what to do
     * @return what became of the lines
     * @throws IOException if a file cannot be read or written
     */
    static BatchSummary run(SparkSession spark, BatchArguments said) throws IOException {
        return new CutBatch(spark).run(said);
    }

    private BatchSummary run(BatchArguments said) throws IOException {
        Path asked = new Path(said.output());
        FileSystem system = asked.getFileSystem(files);
        Path output = system.makeQualified(asked);
        if (system.exists(output)
                && !system.exists(new Path(output, SUMMARY))
                && system.listStatus(output).length > 0) {
            throw new IllegalArgumentException(
                    output + " holds something that is no result of this job; name an empty folder or a new one.");
        }
        TreeMap<String, byte[]> styles = styles(said.styles());
        new OrderCutter(styles, said.formats()); // refuses a wrong style here, not on every machine
        Path next = new Path(output.getParent(), "_" + output.getName() + ".next");
        system.delete(next, true);
        OrderLines lines = OrderLines.of(context, said.orders(), said.splitBytes());
        write(cut(lines, styles, said.formats()), new Path(next, ORDERS));
        Dataset<Row> table = spark.read().schema(TABLE).parquet(new Path(next, ORDERS).toString());
        Dataset<Row> notCut = table.where(table.col(OUTCOME).equalTo(NOT_CUT));
        notCut.select("input", "line", "problem")
                .coalesce(1)
                .sortWithinPartitions("input", "line")
                .select("problem")
                .write()
                .mode(SaveMode.Overwrite)
                .text(new Path(next, ERRORS).toString());
        long rows = table.where(table.col(OUTCOME).equalTo(CUT)).count();
        BatchSummary summary = new BatchSummary(
                        lines.count(), rows / said.formats().size(), notCut.count(), said.formats(), engine())
                .counted();
        try (OutputStream out = system.create(new Path(next, SUMMARY), true)) {
            out.write(summary.json().getBytes(StandardCharsets.UTF_8));
        }
        system.delete(output, true);
        if (!system.rename(next, output)) {
            throw new IOException("The result stays at " + next + ", as it cannot be renamed to " + output + ".");
        }
        return summary;
    }

    private static void write(Dataset<Row> rows, Path folder) {
        rows.write()
                .partitionBy(OUTCOME)
                .option("parquet.block.size", ROW_GROUP)
                .mode(SaveMode.Overwrite)
                .parquet(folder.toString());
    }

    private Dataset<Row> cut(OrderLines lines, TreeMap<String, byte[]> styles, List<String> formats) {
        // Without this the rows of a task are sorted, with the files in them, before they are written to two folders.
        spark.conf().set("spark.sql.maxConcurrentOutputFileWriters", 2);
        Broadcast<TreeMap<String, byte[]>> known = context.broadcast(styles);
        ArrayList<String> asked = new ArrayList<>(formats);
        JavaRDD<Row> rows = lines.use(context, part -> rows(part, new OrderCutter(known.value(), asked)));
        return spark.createDataFrame(rows, TABLE);
    }

    private static Iterator<Row> rows(Iterator<OrderLines.Line> lines, OrderCutter cutter) {
        return new Iterator<>() {
            private Iterator<Row> ready = List.<Row>of().iterator();

            @Override
            public boolean hasNext() {
                return ready.hasNext() || lines.hasNext();
            }

            @Override
            public Row next() {
                if (!ready.hasNext()) {
                    OrderLines.Line line = lines.next();
                    ready = rows(line, cutter.cut(line.bytes())).iterator();
                }
                return ready.next();
            }
        };
    }

    private static List<Row> rows(OrderLines.Line line, Outcome outcome) {
        String input = new Path(line.file()).getName();
        if (outcome instanceof Outcome.Cut cut) {
            return cut.files().stream()
                    .map(file -> RowFactory.create(
                            input,
                            line.number(),
                            cut.reference(),
                            cut.style(),
                            file.format(),
                            file.sha256(),
                            file.content().length,
                            file.content(),
                            "",
                            CUT))
                    .toList();
        }
        Outcome.NotCut notCut = (Outcome.NotCut) outcome;
        String problem = problem(input, line.number(), notCut);
        return List.of(RowFactory.create(
                input, line.number(), notCut.reference(), "", "", "", 0, new byte[0], problem, NOT_CUT));
    }

    private static String problem(String input, long line, Outcome.NotCut notCut) {
        return Problems.MAPPER.writeValueAsString(
                new Problem(input, line, notCut.reference(), notCut.state(), notCut.refusals()));
    }

    /** One line of the errors. */
    private record Problem(String input, long line, String reference, String state, List<Refusal> problems) {}

    /** Made where it is used, since it does not travel to other machines. */
    private static final class Problems {
        private static final JsonMapper MAPPER = JsonMapper.builder().build();

        private Problems() {}
    }

    private TreeMap<String, byte[]> styles(String named) throws IOException {
        Path path = new Path(named);
        FileSystem system = path.getFileSystem(files);
        TreeMap<String, byte[]> styles = new TreeMap<>();
        for (FileStatus file : system.listStatus(path)) {
            String name = file.getPath().getName();
            if (file.isFile() && name.endsWith(".json")) {
                try (FSDataInputStream in = system.open(file.getPath())) {
                    styles.put(name.substring(0, name.length() - ".json".length()), in.readAllBytes());
                }
            }
        }
        if (styles.isEmpty()) {
            throw new IllegalArgumentException("There is no style <id>.json at " + path + ".");
        }
        return styles;
    }

    private static String engine() {
        String version = CutBatch.class.getPackage().getImplementationVersion();
        return version == null ? "unpackaged" : version;
    }
}
