#!/usr/bin/env bash
# Checks the pages in PATHS, one a line: in the log as text, in the summary of the run as Markdown, and as SARIF in the file SARIF where that is named.
# Ends as `platewright check` does; STRICT=true counts warnings as well.
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
install
read_paths
strict=()
[ "${STRICT-}" != true ] || strict=(--strict)
made=$(mktemp)
trap 'rm -f "$made"' EXIT
code=0
platewright check ${strict[@]+"${strict[@]}"} --format markdown -- "${paths[@]}" > "$made" 2> /dev/null || true
summarise "$made"
[ -z "${SARIF-}" ] || platewright check --format sarif -- "${paths[@]}" > "$SARIF" 2> /dev/null || true
platewright check ${strict[@]+"${strict[@]}"} -- "${paths[@]}" > "$made" 2>&1 || code=$?
show "$made"
exit "$code"
