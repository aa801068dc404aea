no-file = There is no file { $file }.
no-devices = A list of causes knows no devices. Leave --device out, or name a fault record.
not-listed = { $device } does not list the fault { $fault }. Leave --device out, or name another.
unknown = There is no { $kind } { $id }.{ $near }
