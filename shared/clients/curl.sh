#!/bin/sh
# Asks a Surfeit service with curl. Needs a POSIX shell and curl 7.76 or newer. Run by the project's own tests.
#
#   sh curl.sh ask TABLE.csv ag-cu-eutectic          what a table shows; nothing is stored
#   sh curl.sh describe lot-7 SAMPLE.json            give a sample its description
#   sh curl.sh post lot-7 TABLE.csv                  record a table; again, it changes nothing
#   sh curl.sh answer lot-7 [md|csv|json]            what the sample's spots show
#   sh curl.sh compare lot-7 lot-7-etched            two samples against each other
#   sh curl.sh freeze lot-7                          keep today's answer for ever
#   sh curl.sh results [lot-7]                       every result as CSV
#
# SURFEIT_URL names the service (else http://127.0.0.1:8420); SURFEIT_TOKEN holds the token, where one is needed.
# A refusal is printed as it came, and the exit code is 22.
set -eu

url="${SURFEIT_URL:-http://127.0.0.1:8420}"

# The token goes in by standard input: words of a command can be read by every user of the machine.
ask() {
  if [ -n "${SURFEIT_TOKEN:-}" ]; then
    printf 'header = "Authorization: Bearer %s"\n' "$SURFEIT_TOKEN" | curl -sS --fail-with-body -K - "$@"
  else
    curl -sS --fail-with-body "$@"
  fi
}

media_type() {
  case "$1" in
    *.json) echo application/json ;;
    *.ndjson) echo application/x-ndjson ;;
    *) echo text/csv ;;
  esac
}

case "${1:-}" in
  ask) ask -H "Content-Type: $(media_type "$2")" --data-binary "@$2" "$url/v1/interpretations.md?alloy=$3" ;;
  describe) ask -X PUT -H 'Content-Type: application/json' --data-binary "@$3" "$url/v1/samples/$2" ;;
  post) ask -H "Content-Type: $(media_type "$3")" --data-binary "@$3" "$url/v1/samples/$2/spots" ;;
  answer) ask "$url/v1/samples/$2/segregation.${3:-md}" ;;
  compare) ask "$url/v1/comparisons.md?a=$2&b=$3" ;;
  freeze) ask -X POST "$url/v1/samples/$2/interpretations" ;;
  results) ask "$url/v1/results.csv${2:+?sample=$2}" ;;
  *) sed -n '2,14s/^# \{0,1\}//p' "$0" >&2; exit 2 ;;
esac
