#!/bin/sh
# Measures orders on the running service: a batch of each length as a stream and as a job, with the peak of the heap, and single orders beside the same sleeve by made to measure, in turns. Prints Markdown. Run it
# after ./start.sh or mvn package; it starts a service of its own.
# Arguments: the lengths of the batches (1000 10000). Settings: STORE (a new folder; or an address of an empty PostgreSQL), HEAP (256m), ROUNDS (5), ORDERS (40 in a round), JAVA_COMMAND.
set -eu
cd "$(dirname "$0")/.."
. ./install.sh
need curl curl
port=${PORT:-18998}
work=$(mktemp -d)
pid=
trap '[ -z "$pid" ] || kill "$pid" 2>/dev/null || true; rm -rf "$work"' EXIT
command=${JAVA_COMMAND:-"java -Xmx${HEAP:-256m} -jar ${JAR:-$(echo grading-service/target/grading-service-*-exec.jar)}"}
# shellcheck disable=SC2086
JDK_JAVA_OPTIONS="-Xlog:gc:file=$work/gc.log" $command --server.port="$port" --server.address=127.0.0.1 --capwright.store="${STORE:-$work/store}" >"$work/log" 2>&1 &
pid=$!
url=http://127.0.0.1:$port
tries=0
until curl -sf -o /dev/null "$url/actuator/health"; do
  kill -0 "$pid" 2>/dev/null || { cat "$work/log" >&2; exit 1; }
  tries=$((tries + 1))
  [ "$tries" -lt 600 ] || exit 1
  sleep 0.2
done
json='Content-Type: application/json'
lines='Content-Type: application/x-ndjson'
curl -sf -o /dev/null -X PUT -H "$json" --data-binary @examples/choir-gown.json "$url/v1/styles/measured"
now() { date +%s.%N; }
# peak: the most heap in use that any collection found, MB
peak() { awk '/->/ { match($0, /[0-9]+M->/); used = substr($0, RSTART, RLENGTH - 3) + 0; if (used > top) top = used } END { print top + 0 }' "$work/gc.log"; }
order=$(tr -d '\n' <examples/order.json | sed 's/"reference": *"[^"]*", *//')
batch() { yes "$(echo "$order" | sed 's/^{/{"style":"measured",/')" | head -n "$1"; }
rate() { echo "$1 $2 $3" | awk '{ printf "%.1f\n", $1 / ($3 - $2) }'; }

batch 50 | curl -sf -o /dev/null -H "$lines" -T - -X POST "$url/v1/order-batches" # warms up
echo "| batch | lines | orders/s | peak heap, MB |"
echo "|---|---|---|---|"
for length in "${@:-1000}"; do
  : >"$work/gc.log"
  begun=$(now)
  taken=$(batch "$length" | curl -sf -H "$lines" -T - -X POST "$url/v1/order-batches" | grep -c '"status":201') || true
  [ "$taken" = "$length" ] || { echo "$taken of $length orders were taken" >&2; exit 1; }
  echo "| stream | $length | $(rate "$length" "$begun" "$(now)") | $(peak) |"
  : >"$work/gc.log"
  begun=$(now)
  job=$(batch "$length" | curl -sf -D - -o /dev/null -H "$lines" -H 'Prefer: respond-async' -T - -X POST "$url/v1/order-batches" | sed -n 's/^[Ll]ocation: *\([^[:space:]]*\).*/\1/p')
  curl -sfN -o /dev/null "$url$job/events"
  ended=$(now)
  taken=$(curl -sf "$url$job/results" | grep -c '"status":201') || true
  [ "$taken" = "$length" ] || { echo "$taken of $length orders were taken by the job" >&2; exit 1; }
  echo "| job | $length | $(rate "$length" "$begun" "$ended") | $(peak) |"
done

# many FILE URL HEADER: sends a body over and over, two at a time; gives requests a second
many() {
  begun=$(now)
  seq "${ORDERS:-40}" | xargs -P 2 -I{} curl -sf -o /dev/null -H "$json" -H "$3" --data-binary "@$1" "$2"
  rate "${ORDERS:-40}" "$begun" "$(now)"
}
median() { sort -n | awk '{ v[NR] = $1 } END { print (NR % 2 ? v[(NR + 1) / 2] : (v[NR / 2] + v[NR / 2 + 1]) / 2) }'; }
echo "$order" >"$work/order.json"
for round in $(seq "${ROUNDS:-5}"); do
  many examples/made-to-measure.json "$url/v1/made-to-measure" 'Accept: application/pdf' >>"$work/pdf"
  many examples/made-to-measure.json "$url/v1/made-to-measure" 'Accept: application/zip' >>"$work/zip"
  many "$work/order.json" "$url/v1/styles/measured/orders" 'Accept: application/json' >>"$work/taken"
done
echo
echo "Single requests, two at a time, median of ${ROUNDS:-5} rounds: made to measure as PDF $(median <"$work/pdf")/s, with every file $(median <"$work/zip")/s; orders, every file drawn and kept, $(median <"$work/taken")/s."
