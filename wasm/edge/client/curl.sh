#!/usr/bin/env bash
# The service asked with curl alone: a job to start from, its answer, and a table of jobs.
#
#   drywright serve --api &
#   wasm/edge/client/curl.sh http://127.0.0.1:8417
set -euo pipefail
service="${1:-http://127.0.0.1:8417}"
folder="$(mktemp -d)"
trap 'rm -r "$folder"' EXIT

# A worked example; change its numbers with any editor.
curl -sSf "$service/v1/demo" > "$folder/job.json"

# The result of the job, in words and numbers. --fail-with-body has curl fail where the answer is a problem document, and print it.
printf '{"job": %s}' "$(cat "$folder/job.json")" > "$folder/question.json"
curl -sS --fail-with-body "$service/v1/predict" -H 'Content-Type: application/json' --data-binary "@$folder/question.json" > "$folder/answer.json"
echo "predict: $(wc -c < "$folder/answer.json") bytes"

# Many jobs, one a row, for a spreadsheet.
curl -sS --fail-with-body "$service/v1/table?base=sleeves" -H 'Content-Type: text/csv' --data-binary "@$(dirname "${BASH_SOURCE[0]}")/jobs.csv"
