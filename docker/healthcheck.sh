#!/bin/sh
# Ready means: the server answers and its database does too.
exec curl -fsS -o /dev/null "http://127.0.0.1:${TABLEWEATHER_PORT:-8080}/health/ready"
