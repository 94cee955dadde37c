#!/usr/bin/env bash
# Run once by the primary's image when its cluster is made: the application's login may also follow as a replica.
set -euo pipefail
echo 'host replication sectorline samenet scram-sha-256' >>"$PGDATA/pg_hba.conf"
