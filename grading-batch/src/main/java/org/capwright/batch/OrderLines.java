package org.capwright.batch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.io.LongWritable;
import org.apache.hadoop.io.Text;
import org.apache.hadoop.mapreduce.InputSplit;
import org.apache.hadoop.mapreduce.lib.input.FileSplit;
import org.apache.hadoop.mapreduce.lib.input.TextInputFormat;
import org.apache.spark.api.java.JavaNewHadoopRDD;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import scala.Tuple2;

/**
 * Lines with the numbers that they have in their files. Tasks read parts of files, and a part does not know how many lines are before it: all parts are counted first, which reads the input once more and moves nothing
 * between machines but one number for each part.
 */
final class OrderLines {

    private static final String LARGEST_SPLIT = "mapreduce.input.fileinputformat.split.maxsize";

    private final JavaNewHadoopRDD<LongWritable, Text> parts;
    private final Map<String, Long> firsts = new HashMap<>();
    private final long count;

    private OrderLines(JavaNewHadoopRDD<LongWritable, Text> parts, List<Part> counted) {
        this.parts = parts;
        long all = 0;
        Map<String, Map<Long, Part>> files = new TreeMap<>();
        for (Part part : counted) {
            files.computeIfAbsent(part.file(), absent -> new TreeMap<>()).put(part.start(), part);
        }
        for (Map<Long, Part> file : files.values()) {
            long first = 1;
            for (Part part : file.values()) {
                firsts.put(part.key(), first);
                first += part.lines();
            }
            all += first - 1;
        }
        this.count = all;
    }

    /** A part of a file. */
    record Part(String file, long start, long lines) implements java.io.Serializable {

        String key() {
            return key(file, start);
        }

        static String key(String file, long start) {
            return file + "@" + start;
        }
    }

    /** A line where it stands. */
    record Line(String file, long number, byte[] bytes) {}

    /** What is done with the lines of a part. */
    interface Use<T> extends java.io.Serializable {
        Iterator<T> of(Iterator<Line> lines);
    }

    static OrderLines of(JavaSparkContext spark, String paths, long splitBytes) {
        Configuration configuration = new Configuration(spark.hadoopConfiguration());
        configuration.setLong(LARGEST_SPLIT, splitBytes);
        JavaNewHadoopRDD<LongWritable, Text> parts = (JavaNewHadoopRDD<LongWritable, Text>)
                spark.newAPIHadoopFile(paths, TextInputFormat.class, LongWritable.class, Text.class, configuration);
        List<Part> counted =
                parts.mapPartitionsWithInputSplit(OrderLines::counted, true).collect();
        return new OrderLines(parts, counted);
    }

    long count() {
        return count;
    }

    <T> JavaRDD<T> use(JavaSparkContext spark, Use<T> use) {
        Broadcast<HashMap<String, Long>> numbers = spark.broadcast(new HashMap<>(firsts));
        return parts.mapPartitionsWithInputSplit(
                (split, lines) -> use.of(numbered((FileSplit) split, lines, numbers.value())), true);
    }

    private static Iterator<Part> counted(InputSplit split, Iterator<Tuple2<LongWritable, Text>> lines) {
        long count = 0;
        while (lines.hasNext()) {
            lines.next();
            count++;
        }
        FileSplit part = (FileSplit) split;
        return new ArrayList<>(List.of(new Part(part.getPath().toString(), part.getStart(), count))).iterator();
    }

    private static Iterator<Line> numbered(
            FileSplit split, Iterator<Tuple2<LongWritable, Text>> lines, Map<String, Long> firsts) {
        String file = split.getPath().toString();
        long first = firsts.getOrDefault(Part.key(file, split.getStart()), 1L);
        return new Iterator<>() {
            private long number = first;

            @Override
            public boolean hasNext() {
                return lines.hasNext();
            }

            @Override
            public Line next() {
                Text text = lines.next()._2();
                return new Line(file, number++, Arrays.copyOf(text.getBytes(), text.getLength()));
            }
        };
    }
}
