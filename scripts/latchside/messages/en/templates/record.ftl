correction = Safety correction, version { $version }:
