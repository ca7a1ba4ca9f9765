#!/usr/bin/env bash
# Does what the Dockerfile and compose.yaml do, without an image registry: makes a bare Debian root with debootstrap,
# runs install.sh in it, starts a PostgreSQL and the server there as users of their own, asks the health check, posts
# nothing, and takes everything down again. Needs root, debootstrap and a Debian package mirror.
#   sudo docker/smoke.sh [FOLDER]     (default: a new temporary folder, removed at the end)
set -euo pipefail
here=$(cd "$(dirname "$0")/.." && pwd)
keep=${1:-}
root=${keep:-$(mktemp -d)}
port=$((20000 + RANDOM % 20000))
database_port=$((port + 1))
server=

say() { printf 'smoke: %s\n' "$*" >&2; }

finish() {
    status=$?
    if [ -n "$server" ] && kill -0 "$server" 2>/dev/null; then
        kill "$server" && wait "$server" 2>/dev/null || true
    fi
    if [ -f "$root/var/lib/postgresql/smoke/postmaster.pid" ]; then
        (as postgres /usr/lib/postgresql/15/bin/pg_ctl -D /var/lib/postgresql/smoke -m fast stop) >/dev/null || true
    fi
    mountpoint -q "$root/proc" && umount "$root/proc"
    mountpoint -q "$root/dev" && umount "$root/dev"
    [ -n "$keep" ] || rm -rf --one-file-system "$root"
    [ "$status" = 0 ] && say "passed" || say "FAILED with status $status"
}
trap finish EXIT

as() { # as USER COMMAND...: becomes that command inside the root; call it in a subshell
    local user=$1
    shift
    exec chroot --userspec="$user" "$root" /usr/bin/env -i PATH=/usr/bin:/bin:/usr/sbin:/sbin HOME=/tmp LANG=C.UTF-8 "$@"
}

[ -f "$here/server/target/quarkus-app/quarkus-run.jar" ] || (cd "$here" && ./mvnw -q -B -DskipTests package -pl server -am)
if [ ! -x "$root/usr/bin/env" ]; then
    say "making a Debian root in $root"
    debootstrap --variant=minbase bookworm "$root" >"$root.log" 2>&1 || { tail -5 "$root.log" >&2; exit 1; }
    rm -f "$root.log"
fi
mount -t proc proc "$root/proc"
mount --bind /dev "$root/dev"

say "installing"
if [ ! -x "$root/usr/bin/java" ]; then
    cp "$here/docker/install.sh" "$root/opt/install.sh"
    chroot "$root" sh /opt/install.sh >/dev/null
    chroot "$root" sh -c 'apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends postgresql' >/dev/null
fi
mkdir -p "$root/opt/tableweather"
cp -a "$here/server/target/quarkus-app/." "$root/opt/tableweather/"
cp "$here/docker/healthcheck.sh" "$root/opt/tableweather/"

say "starting a PostgreSQL on port $database_port"
password=$(od -An -N16 -tx1 /dev/urandom | tr -d ' \n')
rm -rf "$root/var/lib/postgresql/smoke"
printf '%s' "$password" >"$root/var/lib/postgresql/password"
chroot "$root" chown postgres /var/lib/postgresql/password
(as postgres /usr/lib/postgresql/15/bin/initdb -D /var/lib/postgresql/smoke -A scram-sha-256 \
    --pwfile=/var/lib/postgresql/password -U tableweather) >/dev/null
(as postgres /usr/lib/postgresql/15/bin/pg_ctl -D /var/lib/postgresql/smoke -w -l /var/lib/postgresql/smoke.log \
    -o "-p $database_port -c listen_addresses=127.0.0.1" start) >/dev/null
(as postgres PGPASSWORD="$password" /usr/lib/postgresql/15/bin/createdb -h 127.0.0.1 -p "$database_port" -U tableweather tableweather)

say "starting the server on port $port as the user tableweather"
as tableweather \
    TABLEWEATHER_HOST=127.0.0.1 TABLEWEATHER_PORT="$port" TABLEWEATHER_DATA=/var/lib/tableweather/data \
    TABLEWEATHER_DB_URL="jdbc:postgresql://127.0.0.1:$database_port/tableweather" \
    TABLEWEATHER_DB_USER=tableweather TABLEWEATHER_DB_PASSWORD="$password" \
    java -XX:MaxRAMPercentage=60 -jar /opt/tableweather/quarkus-run.jar >"$root/var/log/tableweather.log" 2>&1 &
server=$!

for _ in $(seq 60); do
    if (as tableweather TABLEWEATHER_PORT="$port" sh /opt/tableweather/healthcheck.sh) 2>/dev/null; then
        healthy=1
        break
    fi
    kill -0 "$server" 2>/dev/null || break
    sleep 1
done
[ "${healthy:-0}" = 1 ] || { tail -20 "$root/var/log/tableweather.log" >&2; exit 1; }
say "healthy; asking for the analyzers and the first page"
curl -fsS "http://127.0.0.1:$port/api/v1/analyzers" | grep -q '"rebound-humidity"'
curl -fsS "http://127.0.0.1:$port/" | grep -qi '<html'
