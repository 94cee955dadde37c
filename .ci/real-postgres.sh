# Sourced by .ci/run: a PostgreSQL server for the tests that want a real one.
# Sets REAL_DATABASE_URL to an empty database of its own, and stop_real_postgres removes what was made.

own_cluster=''
own_database=''
admin_url=''

answers() { # url
  node --input-type=module -e '
    import pg from "pg";
    const client = new pg.Client({ connectionString: process.argv[1], connectionTimeoutMillis: 3000 });
    await client.connect();
    await client.query("CREATE DATABASE sectorline_probe_" + process.pid);
    await client.query("DROP DATABASE sectorline_probe_" + process.pid);
    await client.end();' "$1" 2>/dev/null
}

sql() { # url statement
  node --input-type=module -e '
    import pg from "pg";
    const client = new pg.Client({ connectionString: process.argv[1] });
    await client.connect();
    await client.query(process.argv[2]);
    await client.end();' "$1" "$2"
}

as_postgres() {
  if [ "$(id -u)" = 0 ]; then (cd / && setpriv --reuid=postgres --regid=postgres --init-groups "$@"); else "$@"; fi
}

server_programs() {
  local newest
  newest=$(ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -V | tail -n 1)
  [ -n "$newest" ] && [ -x "$newest/initdb" ] && printf '%s' "$newest"
}

install_server() {
  [ "$(id -u)" = 0 ] || { echo 'Only root can install PostgreSQL.' >&2; return 1; }
  export DEBIAN_FRONTEND=noninteractive
  apt-get update -qq && apt-get install -y -qq --no-install-recommends postgresql
}

start_own_cluster() {
  local programs port
  programs=$(server_programs) || { install_server >&2 && programs=$(server_programs); } || return 1
  port=$(node -e 'const s = require("net").createServer().listen(0, "127.0.0.1", () => { console.log(s.address().port); s.close(); })')
  own_cluster=$(mktemp -d)
  chmod 755 "$own_cluster"
  [ "$(id -u)" != 0 ] || chown postgres: "$own_cluster"
  as_postgres "$programs/initdb" -D "$own_cluster/data" -U postgres -A trust -E UTF8 --locale=C.UTF-8 >/dev/null
  as_postgres "$programs/pg_ctl" -D "$own_cluster/data" -w -l "$own_cluster/log" \
    -o "-p $port -c listen_addresses=127.0.0.1 -c unix_socket_directories=''" start >/dev/null
  own_programs=$programs
  admin_url="postgres://postgres@127.0.0.1:$port/postgres"
}

start_real_postgres() { # url that the caller was given, or nothing
  local local_url='postgres://postgres@127.0.0.1:5432/postgres'
  if [ -n "$1" ]; then
    answers "$1" || { echo 'DATABASE_URL is set, but no database can be made there.' >&2; return 1; }
    admin_url=$1
  elif answers "$local_url"; then
    admin_url=$local_url
  else
    start_own_cluster || {
      echo 'NO REAL POSTGRESQL: none answers at 127.0.0.1:5432, and none could be installed. Set DATABASE_URL.' >&2
      return 1
    }
  fi
  own_database="sectorline_ci_$$"
  sql "$admin_url" "CREATE DATABASE $own_database"
  REAL_DATABASE_URL=$(node -e 'const url = new URL(process.argv[1]); url.pathname = process.argv[2]; console.log(url.href)' "$admin_url" "$own_database")
}

stop_real_postgres() {
  if [ -n "$own_database" ]; then sql "$admin_url" "DROP DATABASE IF EXISTS $own_database WITH (FORCE)" || true; fi
  own_database=''
  if [ -n "$own_cluster" ]; then
    as_postgres "$own_programs/pg_ctl" -D "$own_cluster/data" -m immediate stop >/dev/null 2>&1 || true
    rm -rf "$own_cluster"
  fi
  own_cluster=''
}
