#!/usr/bin/env bash
# Writes the file REVIEW as one comment on the pull request NUMBER of GITHUB_REPOSITORY, in the place of the one that was written before. The only script that
# talks to the code host, with its own program, `gh`, and the token in GH_TOKEN. A request from a fork comes with a token that may not write: that is no failure,
# the summary of the run has the same text.
set -euo pipefail
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
[[ $NUMBER =~ ^[0-9]+$ ]] || { echo 'There is no pull request to write on.' >&2; exit 2; }
mark='<!-- platewright -->'
comments=repos/$GITHUB_REPOSITORY/issues/$NUMBER/comments
body=$(mktemp)
trap 'rm -f "$body"' EXIT

refused() {
  echo 'The comment could not be written: the token may not. The summary of this run has the text.' >&2
  exit 0
}
# Of several, the first: a comment of a person that begins with the mark is no program's.
before=$(gh api "$comments" --paginate --jq ".[] | select(.user.type == \"Bot\" and (.body | startswith(\"$mark\"))) | .id") || refused
before=${before%%$'\n'*}
# Nothing differs any more, and nothing was said: nothing is written.
[ -e "$REVIEW" ] || [ -n "$before" ] || exit 0
{
  printf '%s\n' "$mark"
  if [ -e "$REVIEW" ]; then cat -- "$REVIEW"; else echo 'Nothing differs any more: no statement, no result, no finding.'; fi
} | node "$root/server/cli/ci/fit.mjs" 60000 > "$body"
if [ -n "$before" ]; then
  gh api "repos/$GITHUB_REPOSITORY/issues/comments/$before" --method PATCH --field "body=@$body" --silent || refused
else
  gh api "$comments" --method POST --field "body=@$body" --silent || refused
fi
