package org.capwright.batch;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.spark.scheduler.SparkListener;
import org.apache.spark.scheduler.SparkListenerStageCompleted;
import org.apache.spark.sql.SparkSession;

/** Measures the stage that cuts, by one core and by two in turns within one warm process: the clock, and the processor time of the tasks as Spark counts it. Run by {@code benchmarks/batch.sh}; no test. */
final class CutBatchScaling {

    private static final int TASKS = 12;

    private CutBatchScaling() {}

    /** Its arguments are the number of orders and of rounds. */
    public static void main(String[] arguments) throws Exception {
        int number = Integer.parseInt(arguments[0]);
        Path folder = Files.createTempDirectory("batch");
        Path orders = folder.resolve("orders.ndjson");
        Files.writeString(
                orders,
                IntStream.rangeClosed(1, number).mapToObj(Orders::wearer).collect(Collectors.joining("\n")));
        BatchArguments said = BatchArguments.of(
                "--styles",
                Path.of("examples/choir-gown.json").toAbsolutePath().toString(),
                "--orders",
                orders.toString(),
                "--output",
                folder.resolve("out").toString(),
                "--split-bytes",
                Long.toString(Files.size(orders) / TASKS + 1));
        System.out.println("| round | cores | stage, ms | processor, ms |");
        System.out.println("|---|---|---|---|");
        for (int round = 0; round <= Integer.parseInt(arguments[1]); round++) {
            for (int cores = 1; cores <= 2; cores++) {
                Longest longest = measured(cores, said);
                if (round > 0) { // the first one warms up
                    System.out.println(
                            "| " + round + " | " + cores + " | " + longest.clock + " | " + longest.processor + " |");
                }
            }
        }
    }

    private static Longest measured(int cores, BatchArguments said) throws Exception {
        Longest longest = new Longest();
        try (SparkSession spark = SparkSession.builder()
                .master("local[" + cores + "]")
                .config("spark.ui.enabled", "false")
                .config("spark.driver.bindAddress", "127.0.0.1")
                .config("spark.driver.host", "127.0.0.1")
                .getOrCreate()) {
            spark.sparkContext().addSparkListener(longest);
            CutBatch.run(spark, said);
        }
        return longest;
    }

    /** The stage that cuts is by far the longest. */
    private static final class Longest extends SparkListener {

        private long clock;
        private long processor;

        @Override
        public void onStageCompleted(SparkListenerStageCompleted completed) {
            var stage = completed.stageInfo();
            long took = (Long) stage.completionTime().get()
                    - (Long) stage.submissionTime().get();
            if (took > clock) {
                clock = took;
                processor = stage.taskMetrics().executorCpuTime() / 1_000_000;
            }
        }
    }
}
