"""What the chosen device means for one opening: how many parts go on, what stays, what is drilled and what is run."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from latchside.library.model import Record
from latchside.library.traits import Traits, traits
from latchside.planning.holes import pads_alone
from latchside.planning.names import contacts
from latchside.surveys.survey import Opening


@dataclass(frozen=True)
class AtOpening:
    """An opening of the survey, the device class for it (None where none was chosen), and the name of its zone.

    `contact` is the class of the wired contacts that go on the loop of a transmitter, where one can be named.
    `shared` says that two wired contacts share one loop to the panel, and `level` that reed and magnet are level
    without a spacer.
    """

    opening: Opening
    device: Record | None
    spoken: str
    contact: Record | None = None
    shared: bool = False
    level: bool = False

    @cached_property
    def fitted(self) -> bool:
        """Whether a device was chosen."""
        return self.device is not None

    @cached_property
    def traits(self) -> Traits | None:
        """The traits of the device."""
        return traits(self.device) if self.device is not None else None

    @cached_property
    def input(self) -> str | None:
        """The input in use: a device lists the common case first."""
        return str(self.device["inputs"][0]["id"]) if self.device is not None else None

    @cached_property
    def contacts(self) -> int:
        """Contacts at this opening, with those that stay."""
        return contacts(self.opening) if self.fitted else 0

    @cached_property
    def wired(self) -> bool:
        """Whether its zone has a cable to the control unit."""
        return self.traits is not None and self.traits.wired

    @cached_property
    def loop(self) -> bool:
        """Whether a wired contact is on a loop."""
        return self.traits is not None and self.traits.on_loop

    @cached_property
    def transmitter(self) -> bool:
        """Whether the loop ends at the terminals of a transmitter."""
        return self.traits is not None and self.traits.takes_loop

    @cached_property
    def kept(self) -> int:
        """Sound wired contacts that stay in use."""
        return 1 if self.loop and self.opening.old_contact else 0

    @cached_property
    def on_loop(self) -> int:
        """New wired contacts on the loop of a transmitter, which comes without any."""
        return self.contacts - self.kept if self.transmitter else 0

    @cached_property
    def sets(self) -> int:
        """Devices of the class to fit: one transmitter whatever is on its loop, else one for each new contact."""
        return min(self.contacts, 1) if self.transmitter else self.contacts - self.kept

    @cached_property
    def zones(self) -> int:
        """Zones: one for each contact, or one for all contacts in series on one loop."""
        return min(self.contacts, 1) if self.transmitter or self.shared else self.contacts

    @cached_property
    def new_cable(self) -> bool:
        """Whether cable is run: to the control unit, or from a new contact to its transmitter."""
        return self.loop and not self.opening.cable and not (self.transmitter and self.kept)

    @cached_property
    def drilled(self) -> bool:
        """Whether a hole or screw goes in.

        None does where a contact stays and nothing is added, where nothing may be drilled, where pads hold it, and at
        life safety. A transmitter is screwed to the wall beside the opening all the same: pads do not bear the pull of
        its cable.
        """
        if self.traits is None or (not self.sets and not self.on_loop):
            return False
        return self.transmitter or not self.unscrewed(self.traits)

    def unscrewed(self, device: Traits) -> bool:
        """Whether a device of these traits, here or on the loop here, is held without a hole or screw."""
        return not self.may_drill or pads_alone(self.opening, device)

    @cached_property
    def may_drill(self) -> bool:
        """Whether the door or window itself may take a hole or screw."""
        return self.opening.drill is not False and not self.life_safety

    @cached_property
    def padded(self) -> bool:
        """Whether its parts are held by pads, which reach full strength only after a day."""
        return self.sets > 0 and not self.drilled and self.traits is not None and self.traits.has("pad")

    @cached_property
    def life_safety(self) -> bool | None:
        """Fire-rated or an escape way; None where that is not known."""
        answers = (self.opening.fire_rated, self.opening.escape)
        return True if True in answers else None if None in answers else False

    @cached_property
    def cells(self) -> int:
        """Cells to fit."""
        return self.sets if self.traits is not None and self.traits.has("cell") else 0

    @cached_property
    def magnet(self) -> bool:
        """Whether a magnet is fitted or may be in place: that of the device, or of the contact on its loop."""
        if self.traits is None or self.kept:
            return self.kept > 0
        return traits(self.contact).magnetic if self.contact is not None else self.traits.by_magnet
