// What opens the packaged folder on the system that packages: a command, and something to click twice.

/**
 * The command. Without words it opens the application, as a double click does: the window it runs in stays until
 * somebody has read what went wrong.
 */
const shell = `#!/bin/sh
# Wristpin with the runtime beside it; nothing else needs to be installed. "./wristpin --help" lists the commands.
self=$0
while [ -L "$self" ]; do
  to=$(readlink "$self")
  case $to in /*) self=$to ;; *) self=\${self%/*}/$to ;; esac
done
case $self in */*) here=$(cd "\${self%/*}" && pwd -P) ;; *) here=$(pwd -P) ;; esac
set -- "$here/program/bin/wristpin.js" "$@"
[ $# -gt 1 ] && exec "$here/runtime/node" "$@"
[ -t 0 ] || exec "$here/runtime/node" "$@" serve --browser
trap : INT
"$here/runtime/node" "$@" serve --browser && exit
printf '\\nPress Enter to close this window. '
read -r _
exit 1
`;

/** Desktop Entry Specification: in a quoted argument a dollar sign and a quotation mark stand behind two backslashes. */
const desktop = `[Desktop Entry]
Type=Application
Version=1.0
Name=Wristpin
Comment=A bench log that computes
Exec=sh -c "exec \\\\"\\\\\${1%%/*}/wristpin\\\\"" wristpin %k
Terminal=true
Categories=Office;
`;

const windows = `@echo off
rem Wristpin with the runtime beside it; nothing else needs to be installed. "Wristpin --help" lists the commands.
if not "%~1"=="" (
  "%~dp0runtime\\node.exe" "%~dp0program\\bin\\wristpin.js" %*
  exit /b
)
title Wristpin
"%~dp0runtime\\node.exe" "%~dp0program\\bin\\wristpin.js" serve --browser
if errorlevel 1 pause
`;

const readme = ({
  version,
  open,
  command,
  store,
}) => `Wristpin ${version}: a bench log that computes, for small engines.

Open it:   ${open} It comes up in your browser.
Close it:  close the window with the words in it.
Your log is kept outside this folder, in ${store}; save it elsewhere too, on the Shop page or by "${command} backup FILE".
A newer Wristpin: close this one, delete this folder and put the new one in its place. The log stays.
Nothing else has to be installed. "${command} --help" lists the commands. The maker's manual and local rules come first.
`;

/** The files beside the program, by system: { name, text, runs }. */
const bySystem = {
  linux: {
    files: [
      { name: 'wristpin', text: shell, runs: true },
      { name: 'Wristpin.desktop', text: desktop, runs: true },
    ],
    open: 'double-click Wristpin.desktop (right-click it and choose "Allow Launching" the first time), or run ./wristpin.',
    command: './wristpin',
    store: '~/.local/share/wristpin',
  },
  darwin: {
    files: [
      { name: 'wristpin', text: shell, runs: true },
      { name: 'Wristpin.command', text: shell, runs: true },
    ],
    open: 'double-click Wristpin.command (right-click it and choose "Open" the first time), or run ./wristpin.',
    command: './wristpin',
    store: '~/Library/Application Support/Wristpin',
  },
  win32: {
    files: [{ name: 'Wristpin.cmd', text: windows, runs: true }],
    open: 'double-click Wristpin.cmd.',
    command: 'Wristpin',
    store: '%APPDATA%\\Wristpin',
  },
};

/** Every file that lies beside the program on a system, the text for the mechanic among them. */
export function launchers(platform, version) {
  const system = bySystem[platform];
  if (!system) throw new Error(`How a program is opened by a double click on ${platform} is not known here.`);
  const texts = [...system.files, { name: 'README.txt', text: readme({ version, ...system }), runs: false }];
  const ending = platform === 'win32' ? '\r\n' : '\n';
  return texts.map(({ text, ...rest }) => ({ ...rest, text: text.replaceAll('\n', ending) }));
}
