# Read by start.sh and test.sh: installs Debian packages of which a command or a file is missing.
installed_lists=no
as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}
install_package() {
  if [ "$installed_lists" = no ]; then
    as_root apt-get -q update >/dev/null
    installed_lists=yes
  fi
  echo "installing $1" >&2
  as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y install --no-install-recommends "$1" >/dev/null
}
# need COMMAND PACKAGE
need() {
  command -v "$1" >/dev/null 2>&1 || install_package "$2"
}
# need_file PATH PACKAGE
need_file() {
  [ -e "$1" ] || install_package "$2"
}
