#!/bin/sh
# Run once by the store's image when its cluster is new: two roles, so that the running service may not change the journal.
set -eu
psql -v ON_ERROR_STOP=1 -U postgres -v owner_word="$STORE_OWNER_PASSWORD" -v service_word="$STORE_SERVICE_PASSWORD" <<'SQL'
CREATE ROLE repairorders_owner LOGIN PASSWORD :'owner_word';
CREATE ROLE repairorders_service LOGIN PASSWORD :'service_word';
CREATE DATABASE repairorders OWNER repairorders_owner;
SQL
