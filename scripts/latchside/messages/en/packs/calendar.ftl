place = { $site }: { $opening }
