#!/usr/bin/env bash
# Starts the service on this machine, with its demo on the first start and a private PostgreSQL it sets up itself.
# See --help. Ctrl-C stops service and store; the next start keeps all data.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
. "$here/deploy/packages.sh"
. "$here/deploy/store.sh"

port=5210
data=$here/data
empty=no
address=
while [ $# -gt 0 ]; do
  case $1 in
    --port) port=${2:?--port takes a number}; shift 2 ;;
    --data) data=$(realpath -m "${2:?--data takes a folder}"); shift 2 ;;
    --empty) empty=yes; shift ;;
    --store) address=${2:?--store takes a connection string}; shift 2 ;;
    --help | -h)
      cat <<'USAGE'
deploy/run.sh [--port N] [--data FOLDER] [--empty] [--store CONNECTION]
  --port N            the loopback port of the service (5210)
  --data FOLDER       where the store, the demo passwords and the log are kept (data/ in this folder)
  --empty             no demo: a one-time link makes the first administrator
  --store CONNECTION  an existing PostgreSQL instead of a private one (an Npgsql connection string; the role must own its database)
USAGE
      exit 0
      ;;
    *) stop "Unknown option $1; deploy/run.sh --help lists them." ;;
  esac
done
[[ $port =~ ^[0-9]+$ ]] && [ "$port" -ge 1 ] && [ "$port" -le 65535 ] || stop "--port is \"$port\"; allowed is a number from 1 to 65535."

mkdir -p "$data"
exec 9>"$data/lock"
flock -n 9 || stop "A service is already running on $data (see its terminal). Stop it with Ctrl-C, or give this one its own --data and --port."
if (exec 3<>"/dev/tcp/127.0.0.1/$port") 2>/dev/null; then
  stop "Port $port is taken. Choose another with --port."
fi

need_dotnet
if [ -n "$address" ]; then need_packages curl; else need_packages postgresql curl; fi

service_pid=
finish() {
  # A second Ctrl-C must not leave the store running.
  trap '' INT TERM
  trap - EXIT
  if [ -n "$service_pid" ]; then
    kill -TERM "$service_pid" 2>/dev/null || true
    wait "$service_pid" 2>/dev/null || true
  fi
  [ -n "$address" ] || store_stop
  say "Stopped. All data are kept in $data."
}

# Built again only when a source is newer than the last build began.
built=$data/built
if [ ! -f "$built" ] || [ -n "$(find "$here/src" "$here/global.json" "$here"/Directory.*.props -type f -newer "$built" -not -path '*/bin/*' -not -path '*/obj/*' -print -quit)" ]; then
  say "Building …"
  touch "$built.next"
  (cd "$here" && dotnet publish src/RepairOrders.Host -c Release -o "$data/app" -v q --nologo >"$data/build.log" 2>&1) ||
    { tail -n 30 "$data/build.log" >&2; stop "The build failed; the whole log is $data/build.log."; }
  mv "$built.next" "$built"
fi

secrets=$data/secrets
if [ -z "$address" ]; then
  STORE=$(store_folder "$data/store")
  if [ ! -f "$secrets" ]; then
    (umask 077 && cat >"$secrets" <<WORDS
STORE_ADMIN_WORD=$(random_word)
STORE_OWNER_WORD=$(random_word)
STORE_SERVICE_WORD=$(random_word)
WORDS
    )
  fi
  . "$secrets"
  [ -d "$STORE/cluster" ] || { say "Making a private store …"; store_make; }
  STORE_PORT=$(free_port 5433)
  store_running && store_stop # left by a machine that went down
  store_start 9>&- # the lock is this script's, not the store's
  trap finish EXIT
  trap 'exit 130' INT
  trap 'exit 143' TERM
  if [ -z "$(store_sql postgres "SELECT 1 FROM pg_database WHERE datname = 'repairorders'")" ]; then
    rm -f "$data/migrated"
    store_sql postgres "CREATE ROLE repairorders_owner LOGIN PASSWORD '$STORE_OWNER_WORD'"
    store_sql postgres "CREATE ROLE repairorders_service LOGIN PASSWORD '$STORE_SERVICE_WORD'"
    store_sql postgres "CREATE DATABASE repairorders OWNER repairorders_owner"
  fi
  base="Host=127.0.0.1;Port=$STORE_PORT;Database=repairorders;Max Auto Prepare=50"
  owner="$base;Username=repairorders_owner;Password=$STORE_OWNER_WORD"
  service="$base;Username=repairorders_service;Password=$STORE_SERVICE_WORD"
  role=repairorders_service
else
  owner=$address
  service=$address
  role=
  trap finish EXIT
  trap 'exit 130' INT
  trap 'exit 143' TERM
fi

# run_host MODE STORE [NAME=VALUE…]
run_host() {
  local mode=$1 store=$2
  shift 2
  (cd "$data/app" && env ASPNETCORE_ENVIRONMENT=Production Run="$mode" ConnectionStrings__Store="$store" "$@" dotnet RepairOrders.Host.dll)
}

# A private store that this build has brought up to date stays so until the next build; another's store is always asked.
migrated=$data/migrated
if [ -n "$address" ] || [ ! "$migrated" -nt "$built" ]; then
  run_host migrate "$owner" Store__ServiceRole="$role" >>"$data/service.log" 2>&1 || { tail -n 5 "$data/service.log" >&2; stop "The store could not be brought up to date; the log is $data/service.log."; }
  if [ -z "$address" ]; then touch "$migrated"; else rm -f "$migrated"; fi
fi

if [ ! -f "$data/started" ]; then
  if [ "$empty" = yes ]; then
    run_host first-administrator "$service" Link="http://127.0.0.1:$port" | tee "$data/first-administrator"
    chmod 600 "$data/first-administrator"
  else
    say "Loading the demo (two to four minutes, once) …"
    run_host demo "$service" Demo__SignIns="$data/sign-ins.txt" >>"$data/service.log" 2>&1 ||
      { tail -n 5 "$data/service.log" >&2; stop "The demo could not be loaded; the log is $data/service.log."; }
  fi
  touch "$data/started"
fi

(cd "$data/app" && exec env ASPNETCORE_ENVIRONMENT=Production Run=both ConnectionStrings__Store="$service" \
  ASPNETCORE_URLS="http://127.0.0.1:$port" dotnet RepairOrders.Host.dll >>"$data/service.log" 2>&1) &
service_pid=$!
for _ in $(seq 1 600); do
  curl -sf -o /dev/null "http://127.0.0.1:$port/health/ready" 2>/dev/null && break
  kill -0 "$service_pid" 2>/dev/null || { tail -n 5 "$data/service.log" >&2; stop "The service ended; the log is $data/service.log."; }
  sleep 0.1
done
say ""
say "RepairOrders is ready at http://127.0.0.1:$port"
if [ -f "$data/sign-ins.txt" ]; then
  say "Sign in as one of the demo's people (also in $data/sign-ins.txt):"
  cat "$data/sign-ins.txt"
fi
say "Ctrl-C stops the service and its store."
wait "$service_pid"
