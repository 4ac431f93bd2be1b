#!/usr/bin/env bash
# Checks the pages that a commit changes; the arguments are options of `platewright check`, then files.
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
install
given=()
for word in "$@"; do
  # A page whose name begins like an option.
  case $word in -*.plate) word=./$word ;; esac
  given+=("$word")
done
platewright check ${given[@]+"${given[@]}"}
