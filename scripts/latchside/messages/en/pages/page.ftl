value-on-label = the { $value }, as on the label

seen = Seen { $place }
