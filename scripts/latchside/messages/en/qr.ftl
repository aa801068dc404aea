no-address = "{ $address }" is no address of a site: give one such as https://field.example/library/
