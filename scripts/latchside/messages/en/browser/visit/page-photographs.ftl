photograph = Photograph { $opening }
