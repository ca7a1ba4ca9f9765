#!/bin/sh
# Turns a bare Debian root into the server's: runtime, fonts, a user of its own.
# Called by the Dockerfile, and by smoke.sh on a root made by debootstrap: the same steps in both.
set -eu
export DEBIAN_FRONTEND=noninteractive
apt-get update -qq
apt-get install -y -qq --no-install-recommends openjdk-17-jre-headless fontconfig fonts-dejavu-core curl
rm -rf /var/lib/apt/lists/*
useradd --system --uid 10001 --create-home --home-dir /var/lib/tableweather --shell /usr/sbin/nologin tableweather
install -d -o tableweather -g tableweather -m 0750 /var/lib/tableweather/data
