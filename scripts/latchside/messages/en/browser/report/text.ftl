subject = Something wrong: { $title }
page = Page: { $title }
address = Address: { $address }
content = Content: version { $version }, { $date }
content-unknown = Content: version not known
region = Region: { $region }
wrong = What is wrong:
