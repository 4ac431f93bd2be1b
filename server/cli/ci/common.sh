# What the scripts of the action and the hook share; they source it. Words of a page, of a pull request or of a workflow are only ever values of
# variables, in quotes: no shell reads them as code.

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../../.." && pwd)
# A test names another one.
cli=${PLATEWRIGHT_CLI:-$root/dist/cli.cjs}

# Builds the command line in the copy of this repository that runs, once.
install() {
  [ ! -e "$cli" ] || return 0
  (cd "$root" && npm ci --ignore-scripts --no-audit --no-fund && npm run build) >&2
}

platewright() { node "$cli" "$@"; }

# Fills the array `paths` from PATHS, one a line.
read_paths() {
  local line
  paths=()
  while IFS= read -r line || [ -n "$line" ]; do
    line=${line%$'\r'}
    [ -z "$line" ] || paths+=("$line")
  done <<< "${PATHS-}"
  [ ${#paths[@]} -gt 0 ] || paths=(.)
}

# Shows a file in the log. A line of it that looks like a command of the runner is none.
show() {
  local word
  word=$(od -An -N16 -tx1 /dev/urandom | tr -d ' \n')
  printf '::stop-commands::%s\n' "$word"
  cat -- "$1"
  printf '\n::%s::\n' "$word"
}

# Adds a file to the summary of the run, which holds one million bytes.
summarise() {
  [ -z "${GITHUB_STEP_SUMMARY-}" ] || node "$root/server/cli/ci/fit.mjs" 900000 < "$1" >> "$GITHUB_STEP_SUMMARY"
}
