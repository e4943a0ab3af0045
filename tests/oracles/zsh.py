"""zsh as a person sits at it: what it offers where Tab is pressed. The shell runs on a terminal of its own; what its completion
adds is noted in a file, and a key that is pressed after Tab says over a pipe that it has done so."""
import os
import pathlib
import pty
import shutil
import threading

SET_UP = r"""
fpath=("{here}/functions" $fpath)
autoload -Uz compinit && compinit -u -D
compadd() {{
    local -a hits
    if (( ${{@[(I)-[OAD]]}} )); then builtin compadd "$@"; return; fi
    builtin compadd -A hits "$@"
    (( $#hits )) && print -rl -- $hits >>"{here}/offered"
    builtin compadd "$@"
}}
told() {{ print -r done >"{here}/told"; zle kill-whole-line }}
zle -N told && bindkey '^G' told
setopt no_beep no_list_beep
print -r done >"{here}/told"
"""


class Zsh:
    """`completion` is the file to complete by; everything is kept in a folder, and the shell works in another."""

    def __init__(self, completion, folder, works_in):
        if not shutil.which("zsh"):
            raise RuntimeError("there is no zsh; Debian's package of that name brings it")
        self.here = pathlib.Path(folder)
        (self.here / "functions").mkdir()
        (self.here / "functions/_letterlode").write_bytes(pathlib.Path(completion).read_bytes())
        os.mkfifo(self.here / "told")
        self.told = os.open(self.here / "told", os.O_RDWR)
        (self.here / "set-up").write_text(SET_UP.format(here=self.here))
        child, self.terminal = pty.fork()
        if child == 0:
            os.chdir(works_in)
            os.execvpe("zsh", ["zsh", "-f", "-i"], {**os.environ, "TERM": "dumb", "LC_ALL": "C.UTF-8"})
        self.child = child
        self.reader = threading.Thread(target=self._read_screen, daemon=True)
        self.reader.start()
        self._type(f'source "{self.here}/set-up"\n')
        self._wait()

    def _read_screen(self):
        try:
            while os.read(self.terminal, 4096):
                pass
        except OSError:
            pass
        os.write(self.told, b"ended\n")  # whoever waits for the shell hears so

    def _type(self, keys):
        os.write(self.terminal, keys.encode())

    def _wait(self):
        told = os.read(self.told, 100).decode()
        if told != "done\n":
            raise RuntimeError("zsh has " + told)

    def offered(self, line):
        offered = self.here / "offered"
        offered.write_text("")
        self._type(line + "\t\a")
        self._wait()
        return offered.read_text().splitlines()

    def close(self):
        self._type("exit\n")
        os.waitpid(self.child, 0)
        self.reader.join()
        os.close(self.terminal)
        os.close(self.told)
