#!/usr/bin/env bash
# A streaming replica of the primary, made on the first start; then PostgreSQL as it is. For docker-compose.yml.
set -euo pipefail
: "${PGDATA:=/var/lib/postgresql/data}"
if [ ! -s "$PGDATA/PG_VERSION" ]; then
  install -d -m 0700 -o postgres -g postgres "$PGDATA"
  until gosu postgres pg_basebackup --host=postgres --username=sectorline --pgdata="$PGDATA" \
    --wal-method=stream --write-recovery-conf --create-slot --slot=replica --checkpoint=fast; do
    rm -rf "${PGDATA:?}"/* && sleep 2
  done
fi
exec gosu postgres postgres -c hot_standby_feedback=on
