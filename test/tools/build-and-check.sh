#!/usr/bin/env bash
# Builds everything, and lints and checks the types of the tests meanwhile: on two cores that saves the shorter of the two.
set -euo pipefail
cd "$(dirname "$0")/../.."

npx tsc -b shared-calc service addin
(npm run --silent build:service && npm run --silent build:addin) &
build=$!
status=0
(npm run --silent lint && npx tsc -p test/tsconfig.json) || status=$?
wait "$build" || status=$?
exit "$status"
