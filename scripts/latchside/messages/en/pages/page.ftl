value-on-label = the { $value }, as on the label

