"""The workers of a Dask cluster, where the extra `cluster` is installed: an extra, because few firms have one."""

from __future__ import annotations

from concurrent.futures import Executor
from contextlib import AbstractContextManager
from dataclasses import dataclass
from importlib import import_module
from typing import Any

MISSING = "A cluster needs Dask, which is not installed. Install it with: pip install 'latchside[cluster]'"
_WAIT_S = "10s"


class NoClusterError(RuntimeError):
    """The cluster cannot be used; the words say why and what to do."""


@dataclass(frozen=True)
class Cluster:
    """The workers of a cluster. Dask itself tries a piece with other workers first, and says when it gives up."""

    client: Any
    lost: tuple[type[Exception], ...]

    @property
    def count(self) -> int:
        """The threads of all workers that are there now."""
        return max(1, sum(map(int, self.client.nthreads().values())))

    def executor(self, count: int) -> AbstractContextManager[Executor]:
        """All workers, however many are asked for: Dask shares out the work itself."""
        opened: AbstractContextManager[Executor] = self.client.get_executor(pure=False)
        return opened


def joined(address: str) -> Cluster:
    """The cluster whose scheduler is at an address. Raises NoClusterError where there is none, or no Dask here."""
    try:
        distributed: Any = import_module("distributed")  # no part of what every installation needs
    except ModuleNotFoundError:
        raise NoClusterError(MISSING) from None
    try:
        client = distributed.Client(address, timeout=_WAIT_S, set_as_default=False)
    except (OSError, TimeoutError, ValueError) as error:
        raise NoClusterError(f"No cluster answers at {address}: {error}") from None
    if not client.nthreads():
        client.close()
        raise NoClusterError(f"The cluster at {address} has no worker. Start one: dask worker {address}")
    return Cluster(client, (distributed.scheduler.KilledWorker,))
