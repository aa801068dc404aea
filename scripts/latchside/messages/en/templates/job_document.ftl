title = { $site }: job pack
description = Job pack, planned for { $day }.
