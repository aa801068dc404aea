title = Labels
print = Print at full size, on paper or on label sheets, and cut. Each opens its page at { $base }
