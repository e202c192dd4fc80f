# Sourced by deploy/run.sh: a private PostgreSQL cluster under the data folder, with durable defaults and password sign-in on
# loopback. PostgreSQL refuses to run as root, so root hands over to the user postgres.

pg_binaries() { ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -V | tail -n 1; }

# as_store COMMAND…: runs as the store's own user, with nothing of this shell's environment.
as_store() {
  if [ "$(id -u)" -eq 0 ]; then
    (cd / && setpriv --reuid=postgres --regid=postgres --clear-groups --no-new-privs -- env -i PATH=/usr/bin:/bin HOME=/tmp LC_ALL=C.UTF-8 "$@")
  else
    (cd / && env LC_ALL=C.UTF-8 "$@")
  fi
}

random_word() { od -An -tx1 -N24 /dev/urandom | tr -d ' \n'; }

free_port() {
  local port=$1
  while (exec 3<>"/dev/tcp/127.0.0.1/$port") 2>/dev/null; do port=$((port + 1)); done
  echo "$port"
}

# A folder the store's user can reach; a clone below a closed home folder is not one.
store_folder() {
  local wanted=$1
  mkdir -p "$wanted"
  if [ "$(id -u)" -eq 0 ]; then
    chown postgres:postgres "$wanted"
    as_store test -w "$wanted" || {
      wanted=/var/lib/repairorders/$(printf '%s' "$wanted" | sha256sum | cut -c1-12)
      mkdir -p "$wanted"
      chown postgres:postgres "$wanted"
    }
  fi
  echo "$wanted"
}

store_make() {
  local word
  word=$(mktemp)
  chmod 644 "$word"
  printf '%s' "$STORE_ADMIN_WORD" >"$word"
  as_store "$(pg_binaries)/initdb" -D "$STORE/cluster" -U postgres --auth=scram-sha-256 --pwfile="$word" \
    --encoding=UTF8 --locale=C.UTF-8 >/dev/null
  rm -f "$word"
}

store_start() {
  as_store "$(pg_binaries)/pg_ctl" -D "$STORE/cluster" -w -t 60 -l "$STORE/log" \
    -o "-c listen_addresses=127.0.0.1 -c port=$STORE_PORT -c unix_socket_directories=''" start >/dev/null 2>&1 </dev/null ||
    stop "The store did not start; its log is $STORE/log."
}

store_stop() {
  as_store "$(pg_binaries)/pg_ctl" -D "$STORE/cluster" -w -m fast stop >/dev/null 2>&1 || true
}

store_running() { as_store "$(pg_binaries)/pg_ctl" -D "$STORE/cluster" status >/dev/null 2>&1; }

# store_sql DATABASE SQL
store_sql() {
  PGPASSWORD=$STORE_ADMIN_WORD "$(pg_binaries)/psql" -h 127.0.0.1 -p "$STORE_PORT" -U postgres -d "$1" \
    -v ON_ERROR_STOP=1 -qAtX -c "$2"
}
