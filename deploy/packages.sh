# Sourced by deploy/run.sh and tests/run.sh: installs what is missing from the distribution's packages.

say() { printf '%s\n' "$*"; }
stop() {
  printf '%s\n' "$*" >&2
  exit 1
}

need_dotnet() {
  command -v dotnet >/dev/null || stop "The .NET 10 SDK is missing. Install it (package dotnet-sdk-10.0) and run this again."
  dotnet --list-sdks | grep -q '^10\.' || stop "This needs the .NET 10 SDK; here is $(dotnet --version)."
}

# need_packages PACKAGE…: as root or with sudo; otherwise one clear sentence.
need_packages() {
  local missing=()
  for package in "$@"; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return
  local root=()
  if [ "$(id -u)" -ne 0 ]; then
    sudo -n true 2>/dev/null || stop "Missing: ${missing[*]}. Install them (sudo apt-get install ${missing[*]}) and run this again."
    root=(sudo)
  fi
  say "Installing ${missing[*]} …"
  "${root[@]}" apt-get update -qq
  # The distribution's own cluster is not wanted: the service keeps a private one.
  "${root[@]}" mkdir -p /etc/postgresql-common/createcluster.d
  echo 'create_main_cluster = false' | "${root[@]}" tee /etc/postgresql-common/createcluster.d/repairorders.conf >/dev/null
  "${root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}
