rule = Every value that a drawing shows is stated by each device that names the drawing.
