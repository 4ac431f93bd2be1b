#!/usr/bin/env bash
# Tells what a pull request does to the holograms, as Markdown in the file REVIEW, in the log and in the summary of the run. The file is not there where
# nothing differs. BASE: the revision that the request is to be joined with; PATHS: files and folders, one a line.
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
install
read_paths
made=$(mktemp)
trap 'rm -f "$made"' EXIT
rm -f -- "$REVIEW"
code=0
platewright diff --git --format markdown -- "$BASE..." "${paths[@]}" > "$made" || code=$?
if [ "$code" -gt 1 ]; then
  echo 'What the change does could not be told. Has the checkout the whole history (fetch-depth: 0)?' >&2
  exit "$code"
fi
show "$made"
[ "$code" = 1 ] || exit 0
summarise "$made"
mv -- "$made" "$REVIEW"
