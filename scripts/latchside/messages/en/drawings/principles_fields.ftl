title = Steel steals the magnet
about =
    Three times the same magnet and reed. In air the field lines reach the reed and it closes. With the magnet straight
    on steel most lines end in the steel and the reed stays open. With a spacer between magnet and steel enough lines
    reach the reed again and it closes.
in-air = In air
on-steel = Straight on steel
with-spacer = On steel, with a spacer
closes = reed closes
# Two lines of one label.
stays = reed stays
    .open = open
magnet = magnet
steel = steel
spacer = spacer
