#!/bin/sh
# Measures the running service: requests a second for each form of a size run beside a static file of the same bytes from the same server, in turns; what each request allocates; how long answers take at half of
# saturation; what is answered at four times saturation and beyond; and how soon all is well afterwards. Prints Markdown. Start it after ./start.sh or mvn package; it starts a service of its own.
# Settings: SECONDS_EACH (5), ROUNDS (5), WARM_UP (20, seconds for each form, for what is not yet compiled is slow), CONNECTIONS (4), HEAP (512m), JAR, JAVA_COMMAND (a whole command line in place of java -jar).
set -eu
cd "$(dirname "$0")/.."
. ./install.sh
need wrk wrk
need curl curl
seconds=${SECONDS_EACH:-5}
rounds=${ROUNDS:-5}
warm=${WARM_UP:-20}
connections=${CONNECTIONS:-4}
port=${PORT:-18999}
heap=${HEAP:-512m}
work=$(mktemp -d)
mkdir "$work/files"
pid=
trap '[ -z "$pid" ] || kill "$pid" 2>/dev/null || true; rm -rf "$work"' EXIT
command=${JAVA_COMMAND:-"java -Xmx$heap -jar ${JAR:-$(echo grading-service/target/grading-service-*-exec.jar)}"}
# shellcheck disable=SC2086
JDK_JAVA_OPTIONS="-Xlog:gc:file=$work/gc.log" $command --server.port="$port" --server.address=127.0.0.1 --capwright.store=off --capwright.finished-runs=0B \
  --spring.web.resources.static-locations="classpath:/static/,file:$work/files/" >"$work/log" 2>&1 &
pid=$!
url=http://127.0.0.1:$port
tries=0
until curl -sf -o /dev/null "$url/actuator/health"; do
  kill -0 "$pid" 2>/dev/null || { cat "$work/log" >&2; exit 1; }
  tries=$((tries + 1))
  [ "$tries" -lt 600 ] || exit 1
  sleep 0.2
done

# post TYPE > script of wrk
post() {
  cat <<LUA
local file = io.open("examples/choir-gown.json"); wrk.body = file:read("*a"); file:close()
wrk.method = "POST"
wrk.headers["Content-Type"] = "application/json"
wrk.headers["Accept"] = "$1"
LUA
}
# rate URL SCRIPT: requests a second
rate() {
  wrk -t1 -c"$connections" -d"${seconds}s" -s "$2" "$1" | awk '/Requests\/sec/ { print $2 }'
}
median() { sort -n | awk '{ v[NR] = $1 } END { print (NR % 2 ? v[(NR + 1) / 2] : (v[NR / 2] + v[NR / 2 + 1]) / 2) }'; }
# allocated: bytes that garbage collection has seen come, from its log
allocated() { awk '/->/ { match($0, /[0-9]+M->[0-9]+M/); split(substr($0, RSTART, RLENGTH), p, /M->|M/); sum += p[1] - last; last = p[2] } END { printf "%.0f", sum * 1048576 }' "$work/gc.log" 2>/dev/null || echo 0; }
highest() { awk '/->/ { match($0, /[0-9]+M->[0-9]+M/); split(substr($0, RSTART, RLENGTH), p, /M->|M/); if (p[2] > top) top = p[2] } END { print top + 0 }' "$work/gc.log" 2>/dev/null || echo 0; }

echo "wrk.method = 'GET'" >"$work/get.lua"
echo "| form | bytes | requests/s | the same bytes as a file | share | allocated by a request |"
echo "|---|---|---|---|---|---|"
for form in csv:text/csv svg:image/svg+xml dxf:image/vnd.dxf json:application/json pdf:application/pdf zip:application/zip; do
  name=${form%%:*}
  type=${form#*:}
  post "$type" >"$work/$name.lua"
  curl -sf -o "$work/files/$name.bin" -H "Content-Type: application/json" -H "Accept: $type" --data-binary @examples/choir-gown.json "$url/v1/size-runs"
  wrk -t1 -c"$connections" -d"${warm}s" -s "$work/$name.lua" "$url/v1/size-runs" >/dev/null
  : >"$work/shares"
  : >"$work/rates"
  : >"$work/statics"
  : >"$work/bytes"
  for round in $(seq "$rounds"); do
    static=$(rate "$url/$name.bin" "$work/get.lua")
    before=$(allocated)
    run=$(rate "$url/v1/size-runs" "$work/$name.lua")
    echo "$(allocated) $before $run $seconds" | awk '{ each = ($3 > 0) ? ($1 - $2) / ($3 * $4) : 0; print each }' >>"$work/bytes"
    echo "$static" >>"$work/statics"
    echo "$run" >>"$work/rates"
    echo "$run $static" | awk '{ print 100 * $1 / $2 }' >>"$work/shares"
  done
  printf '| %s | %s | %.0f | %.0f | %.1f %% | %.2f MB |\n' "$name" "$(stat -c %s "$work/files/$name.bin")" "$(median <"$work/rates")" "$(median <"$work/statics")" \
    "$(median <"$work/shares")" "$(median <"$work/bytes" | awk '{ print $1 / 1e6 }')"
  cp "$work/rates" "$work/$name.rates"
done
echo
# At half of saturation every connection waits before it asks again, by chance and on average so long that together they ask half as often as was answered.
paced=16
half=$(median <"$work/svg.rates" | awk '{ print $1 / 2 }')
# The file at the same pace tells what of that is the network's and the measuring program's.
paced() {
  { cat "$3"; echo "function delay() return -math.log(1 - math.random()) * 1000 * $paced / $half end"; } >"$work/paced.lua"
  wrk -t1 -c"$paced" -d"$((seconds * 4))s" --latency -s "$work/paced.lua" "$2" | awk -v name="$1" '
    $1 == "50%" { median = $2 } $1 == "99%" { p99 = $2 } /Requests\/sec/ { printf "| %s | %.0f | %s | %s |\n", name, $2, median, p99 }'
}
echo "| at half of saturation of the SVG | requests/s | median | p99 |"
echo "|---|---|---|---|"
paced "SVG" "$url/v1/size-runs" "$work/svg.lua"
paced "the same bytes as a file" "$url/svg.bin" "$work/get.lua"
echo
cat >>"$work/svg.lua" <<'LUA'
local threads = {}
function setup(thread) table.insert(threads, thread) end
function init() ok = 0; busy = 0; other = 0 end
function response(status) if status == 200 then ok = ok + 1 elseif status == 503 then busy = busy + 1 else other = other + 1 end end
function done(summary, latency)
  local sums = { ok = 0, busy = 0, other = 0 }
  for _, thread in ipairs(threads) do for name in pairs(sums) do sums[name] = sums[name] + thread:get(name) end end
  print(string.format("RESULT %d %d %d %.0f", sums.ok, sums.busy, sums.other + summary.errors.connect + summary.errors.timeout, latency:percentile(99) / 1000))
end
LUA
echo "| SVG with connections | answered 200 | sent away 503 | anything else | p99 |"
echo "|---|---|---|---|---|"
for many in $connections $((connections * 4)) $((connections * 64)); do
  wrk -t1 -c"$many" -d"${seconds}s" --timeout 30s -s "$work/svg.lua" "$url/v1/size-runs" | awk -v many="$many" '/^RESULT/ { printf "| %s | %s | %s | %s | %s ms |\n", many, $2, $3, $4, $5 }'
done
# Well again: ten answers in turn, each within a second.
since=$(date +%s%N)
well=0
while [ "$well" -lt 10 ]; do
  if curl -sf --max-time 1 -o /dev/null -H "Content-Type: application/json" -H "Accept: image/svg+xml" --data-binary @examples/choir-gown.json "$url/v1/size-runs"; then
    well=$((well + 1))
  else
    well=0
  fi
  [ $((($(date +%s%N) - since) / 1000000000)) -lt 60 ] || break
done
echo
echo "Ten answers in turn, each within a second, were there $(echo "$since $(date +%s%N)" | awk '{ printf "%.1f", ($2 - $1) / 1e9 }') s after the last of these (the bar is 5 s)."
curl -sf -o /dev/null "$url/actuator/health" && echo && echo "Afterwards the service was in good health; the heap held at most $(highest) MB after a collection."
