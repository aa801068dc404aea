"""The command that shows the site while it is written."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from threading import Thread

import click

from latchside.cli.options import root_option
from latchside.messages import messages

message = messages(__name__)


@click.command()
@root_option
@click.option("--port", type=int, default=8000, show_default=True, help="Where on this machine.")
def serve(root: Path, port: int) -> None:
    """Show the site while you write it, on this machine alone; a page is made again when you save."""
    from latchside.site.preview import Preview
    from latchside.site.serve import HOST, Server, listen

    server = Server(Preview(root))
    try:
        listening = listen(server, port)
    except OSError as error:
        raise click.ClickException(message("no-port", port=str(port), fault=str(error.strerror))) from None
    stop = server.watch()
    Thread(target=listening.serve_forever, daemon=True).start()
    click.echo(message("serving", address=f"http://{HOST}:{listening.server_address[1]}/"))
    try:
        server.again.wait()
    except KeyboardInterrupt:
        return
    stop()
    listening.server_close()
    click.echo(message("again"))
    os.execv(sys.executable, [sys.executable, "-m", "latchside.cli", *sys.argv[1:]])
