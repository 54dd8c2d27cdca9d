#!/bin/bash
# Measures how the batch on Spark grows with cores: the same orders by local[1] and local[2], in turns, each in a process of its own. A short and a long run are taken and their difference counted, so that starting Spark and
# warming up are left out. Prints Markdown: orders per second, and processor seconds per order, which other work on the machine does not change as much. Run it after mvn package.
# Settings: ROUNDS (3), SHORT (100) and LONG (700) orders, SPARK_CLASSPATH (asked of Maven), CORES ("1 2").
set -eu
cd "$(dirname "$0")/.."
. ./install.sh
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
if [ -z "${SPARK_CLASSPATH:-}" ]; then
  mvn -q -o -pl grading-batch dependency:build-classpath -Dmdep.outputFile="$work/classpath"
  SPARK_CLASSPATH=$(echo grading-batch/target/grading-batch-*.jar | cut -d' ' -f1):$(cat "$work/classpath")
fi
opens=$(sed -n 's|.*<spark.opens>\(.*\)</spark.opens>.*|\1|p' grading-batch/pom.xml)
orders() { # NUMBER FILE: wearers whose arms differ
  awk -v number="$1" 'BEGIN { for (i = 1; i <= number; i++) printf "{\"reference\":\"order %d\",\"wearer\":{\"bustGirth\":%d,\"stature\":168,\"upperArmGirth\":%.1f,\"armLength\":59,\"elbowGirth\":26},\"ease\":{\"bicep\":7,\"elbow\":\"15%%\",\"wrist\":6,\"length\":1,\"armhole\":\"14%%\",\"capEase\":\"4%%\"}}\n", i, 94 + i % 5, 31 + i % 10 * 0.1 }' >"$2"
}
orders "${SHORT:-100}" "$work/short.ndjson"
orders "${LONG:-700}" "$work/long.ndjson"
# run CORES LENGTH: prints seconds by the clock and by the processor
run() {
  bytes=$(($(wc -c <"$work/$2.ndjson") / 16 + 1))
  TIMEFORMAT='%R %U %S'
  { time java $opens -Xmx1g -XX:+UseSerialGC -cp "$SPARK_CLASSPATH" org.apache.spark.deploy.SparkSubmit --master "local[$1]" --class org.capwright.batch.CutBatch \
    --conf spark.ui.enabled=false --conf spark.driver.bindAddress=127.0.0.1 --conf spark.driver.host=127.0.0.1 \
    grading-batch/target/grading-batch-*.jar --styles examples/choir-gown.json --orders "$work/$2.ndjson" --output "$work/out" --split-bytes "$bytes" >"$work/said" 2>"$work/log"; } 2>"$work/time" ||
    { tail -n 30 "$work/log" >&2; exit 1; }
  grep -q '"notCut":0' "$work/said" || { cat "$work/said" >&2; exit 1; }
  awk '{ print $1, $2 + $3 }' "$work/time"
}
number=$((${LONG:-700} - ${SHORT:-100}))
echo "| cores | round | orders/s | processor s/order |"
echo "|---|---|---|---|"
for round in $(seq "${ROUNDS:-3}"); do
  for cores in ${CORES:-1 2}; do
    short=$(run "$cores" short)
    long=$(run "$cores" long)
    echo "$short $long" | awk -v n="$number" -v cores="$cores" -v round="$round" '{ printf "| %d | %d | %.1f | %.4f |\n", cores, round, n / ($3 - $1), ($4 - $2) / n }'
  done
done
