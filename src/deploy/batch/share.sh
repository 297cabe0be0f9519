#!/bin/sh
# One share of a big batch: sends its lines of INPUT to POST /v1/batches in pieces and writes the answers, numbered as the lines of INPUT, to
# OUTPUT/answers-NNNNN.ndjson. The same line always gives the same answer, so whatever breaks off is sent again from there; a share that
# was begun goes on where it ended. Needs sh, awk, sed and curl.
# Settings: SERVICE (address), INPUT, OUTPUT (folder), SHARES, JOB_COMPLETION_INDEX (from 0), API_KEY (or none), PIECE (lines), TRIES, WAIT (s).
set -eu
: "${SERVICE:?}" "${INPUT:?}" "${OUTPUT:?}" "${SHARES:?}" "${JOB_COMPLETION_INDEX:?}"
piece=${PIECE:-2000} tries=${TRIES:-20} wait=${WAIT:-2}

name=answers-$(printf %05d "$JOB_COMPLETION_INDEX")
part=$OUTPUT/$name.part
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# Without a line whose end is missing.
whole() { if [ -s "$1" ] && [ "$(tail -c 1 "$1" | wc -l)" -eq 0 ]; then sed '$d' "$1"; else cat "$1"; fi; }
count() { awk 'END { print NR }' "$1"; }

total=$(count "$INPUT")
first=$((total * JOB_COMPLETION_INDEX / SHARES + 1))
last=$((total * (JOB_COMPLETION_INDEX + 1) / SHARES))
if [ -f "$OUTPUT/$name.ndjson" ]; then echo "$name.ndjson is there already"; exit 0; fi
touch "$part"
whole "$part" > "$work/had"
mv "$work/had" "$part"

next=$((first + $(count "$part")))
failed=0
while [ "$next" -le "$last" ]; do
  to=$((next + piece - 1))
  [ "$to" -le "$last" ] || to=$last
  sed -n "${next},${to}p;${to}q" "$INPUT" > "$work/lines"
  : > "$work/answers"
  status=$(curl -sS -o "$work/answers" -w '%{http_code}' -X POST "$SERVICE/v1/batches" -H 'Content-Type: application/x-ndjson' \
    -H 'Expect:' ${API_KEY:+-H "X-Api-Key: $API_KEY"} -T "$work/lines" 2> "$work/why") || true
  case $status in
    200) ;;
    # Too many at once, about to stop, or nobody there: later.
    000 | 429 | 502 | 503 | 504) : > "$work/answers" ;;
    *) echo "lines $next to $to: status $status" >&2; cat "$work/answers" >&2; exit 1 ;;
  esac
  whole "$work/answers" > "$work/answered"
  got=$(count "$work/answered")
  # The last one of an answer that ended early says why, and is no answer to its line.
  if [ "$got" -gt 0 ] && { [ "$got" -lt $((to - next + 1)) ] || tail -n 1 "$work/answered" | grep -q '"resumeFrom":'; }; then
    sed '$d' "$work/answered" > "$work/kept"
    mv "$work/kept" "$work/answered"
    got=$((got - 1))
  fi
  awk -v before=$((next - 1)) '{ sub(/^\{"line":[0-9]+/, "{\"line\":" before + NR); print }' "$work/answered" >> "$part"
  next=$((next + got))
  if [ "$got" -gt 0 ]; then
    failed=0
  else
    failed=$((failed + 1))
    if [ "$failed" -ge "$tries" ]; then echo "line $next: no answer after $tries tries, status $status $(cat "$work/why")" >&2; exit 1; fi
    sleep "$wait"
  fi
done
mv "$part" "$OUTPUT/$name.ndjson"
echo "$name.ndjson: lines $first to $last, $(grep -c '"status":200,' "$OUTPUT/$name.ndjson" || true) of $((last - first + 1)) with status 200"
