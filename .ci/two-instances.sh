#!/usr/bin/env bash
# Two instances behind nginx over a primary and a streaming replica, on a bare machine: what docker-compose.yml describes
# with --profile several. Needs Debian's postgresql and nginx-light or nginx, and root. Ends with what was seen.
set -euo pipefail
cd "$(dirname "$0")/.."
bin=$(ls -d /usr/lib/postgresql/*/bin | tail -1)
work=$(mktemp -d)
chmod 711 "$work"
# Below the range from which the system gives ports away.
primary=25432 replica=25433 one=24101 two=24102 front=24180
pids=()
tidy() {
  status=$?
  trap - EXIT
  [ ${#pids[@]} -eq 0 ] || kill "${pids[@]}" 2>/dev/null || true
  for data in replica primary; do
    [ ! -d "$work/$data" ] || as_postgres "$bin/pg_ctl" -D "$work/$data" -m immediate stop >/dev/null 2>&1 || true
  done
  [ $status -eq 0 ] || tail -n 5 "$work"/*.log >&2 || true
  rm -rf "$work"
  exit $status
}
trap tidy EXIT
as_postgres() { (cd "$work" && setpriv --reuid=postgres --regid=postgres --init-groups "$@"); }
until_true() {
  for _ in $(seq 300); do
    if "$@" >/dev/null 2>&1; then return 0; fi
    sleep 0.2
  done
  echo "gave up waiting for: $*" >&2
  return 1
}
sql() { as_postgres "$bin/psql" -h "$work" -p "$1" -d postgres -XAtc "$2"; }

install -d -o postgres "$work/primary" "$work/replica"
chmod 700 "$work/primary" "$work/replica"
chown postgres "$work"
as_postgres "$bin/initdb" -D "$work/primary" --data-checksums --encoding=UTF8 --locale=C.UTF-8 >/dev/null
as_postgres "$bin/pg_ctl" -D "$work/primary" -w -l "$work/primary.log" -o "-p $primary -k $work" start >/dev/null
as_postgres "$bin/pg_basebackup" -h "$work" -p "$primary" -D "$work/replica" -R -X stream -C -S replica -c fast
as_postgres "$bin/pg_ctl" -D "$work/replica" -w -l "$work/replica.log" -o "-p $replica -k $work" start >/dev/null

instance() {
  PORT=$1 DEMO=$2 NODE_ENV=production LOG_LEVEL=warn SECTORLINE_DATA="$work/data" \
    SECTORLINE_SECRET='only for a try of two instances, thrown away' TRUSTED_PROXIES=127.0.0.1 \
    DATABASE_URL="postgres://postgres@127.0.0.1:$primary/postgres" \
    DATABASE_REPLICA_URLS="postgres://postgres@127.0.0.1:$replica/postgres" \
    node --conditions=source --import @swc-node/register/esm-register apps/api/src/main.ts >"$work/$1.log" 2>&1 &
  pids+=($!)
}
instance $one 1
first=$!
until_true curl -fs "http://127.0.0.1:$one/readyz"
instance $two 0
until_true curl -fs "http://127.0.0.1:$two/readyz"
sed "s/api:4000/127.0.0.1:$one/; s/api-2:4000/127.0.0.1:$two/; s/listen 8080/listen $front/; s#/tmp/tables#$work/tables#" \
  apps/api/deploy/nginx.conf >"$work/nginx.conf"
nginx -c "$work/nginx.conf" -g "daemon off; pid $work/nginx.pid; error_log $work/nginx.log;" &
pids+=($!)
until_true curl -fs "http://127.0.0.1:$front/readyz"

# The demonstration is entered at the first instance, which takes some seconds; then nothing moves any more.
versions() { sql "$1" 'SELECT coalesce(sum(version), 0) FROM competition'; }
at_rest() { local before; before=$(versions $primary) && sleep 4 && [ "$before" != 0 ] && [ "$before" = "$(versions $primary)" ]; }
followed() { [ "$(versions $primary)" = "$(versions $replica)" ]; }
until_true at_rest
meet=$(curl -fs "http://127.0.0.1:$front/public/graphql?documentId=latest-meets" | grep -o '"id":"[^"]*"' | head -1 | cut -d'"' -f4)
for port in $one $two $front; do
  curl -fs "http://127.0.0.1:$port/public/meets/$meet.json" >"$work/meet.$port"
done
cmp "$work/meet.$one" "$work/meet.$two"
echo "both instances and nginx show the same meet: $(wc -c <"$work/meet.$front") bytes"
until_true followed
echo "the replica has the versions of the primary: $(versions $replica) together"
kill -9 "$first"
for _ in 1 2 3 4 5 6; do curl -fs -o "$work/after" "http://127.0.0.1:$front/livez"; done
echo "an instance was killed: nginx answers from the other one"
