#!/bin/sh
# Measures how the batch on Spark grows with cores: the same orders by local[1] and local[2], in turns, in one process. Prints Markdown: how long the stage that cuts takes by the clock, and the processor time of its tasks. Run it
# after mvn package.
# Settings: ORDERS (96), ROUNDS (5), SPARK_CLASSPATH (asked of Maven).
set -eu
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
if [ -z "${SPARK_CLASSPATH:-}" ]; then
  mvn -q -o -pl grading-batch -am package -DskipTests -Dmaven.javadoc.skip=true dependency:build-classpath -Dmdep.outputFile="$work/classpath"
  SPARK_CLASSPATH=grading-batch/target/test-classes:grading-batch/target/classes:$(cat "$work/classpath")
fi
# shellcheck disable=SC2046
java $(sed -n 's|.*<spark.opens>\(.*\)</spark.opens>.*|\1|p' grading-batch/pom.xml) -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -Xmx1g -cp "$SPARK_CLASSPATH" org.capwright.batch.CutBatchScaling \
  "${ORDERS:-96}" "${ROUNDS:-5}" 2>"$work/log" || { tail -n 30 "$work/log" >&2; exit 1; }
