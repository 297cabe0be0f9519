#!/usr/bin/env bash
# A shop hand with curl: a tape in inches, a sheet by its trade name, and no more of an answer than a bench reads.
set -euo pipefail
url=${1:-http://localhost:8080}
answer=$(curl -sf "$url/v1/forms" -H 'Content-Type: application/json' -H 'Prefer: return=minimal' -d '{
  "units": "in",
  "panel": { "material": { "id": "mild steel" }, "gauge": "20 ga", "width": "24 1/2",
    "curve": { "type": "arc", "chord": "8 1/2", "rise": "1 3/4" } } }')
text() { grep -o "\"$1\":\"[^\"]*\"" <<< "$answer" | cut -d'"' -f4; }
echo "bench: $(text text | head -1)"
echo "bench: marks at $(text markText | tr '\n' ',')"
echo "bench: ${#answer} bytes"
[ "${#answer}" -le 3072 ]
