#!/bin/sh
# What the browser tests say where there is no node: skipped, or failed where it has to be there.
reason='node is not installed (Debian: nodejs)'
if [ "$WATTWEEK_BROWSER" = required ]; then
  echo "FAILED: $reason"
  exit 1
fi
echo "SKIPPED: $reason"
exit 77
