#!/usr/bin/env bash
# Makes the command line ready, so that the steps behind it need nothing from outside.
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
install
