#!/bin/sh
# Builds the service and starts it; prints the address when it answers. Installs a JDK and Maven where they are missing (Debian).
set -eu
cd "$(dirname "$0")"
. ./install.sh
need java openjdk-17-jdk-headless
need javac openjdk-17-jdk-headless
need mvn maven
mvn -q -B -ntp package -DskipTests -pl grading-service -am
PORT="${PORT:-8080}" exec java -jar grading-service/target/grading-service-*-exec.jar
